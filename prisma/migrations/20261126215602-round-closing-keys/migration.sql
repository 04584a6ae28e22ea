-- AlterTable
ALTER TABLE "Round" ADD COLUMN "closingKeyHash" TEXT;

-- CreateTable
CREATE TABLE "RoundArrival" (
    "workspaceId" TEXT NOT NULL,
    "code" TEXT NOT NULL,
    "device" TEXT NOT NULL,
    "arrivedAt" DATETIME NOT NULL,

    PRIMARY KEY ("workspaceId", "code", "device"),
    CONSTRAINT "RoundArrival_workspaceId_code_fkey" FOREIGN KEY ("workspaceId", "code") REFERENCES "Round" ("workspaceId", "code") ON DELETE RESTRICT ON UPDATE CASCADE
);
