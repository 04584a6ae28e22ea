-- CreateTable
CREATE TABLE "Round" (
    "workspaceId" TEXT NOT NULL,
    "code" TEXT NOT NULL,
    "sheet" TEXT NOT NULL,
    "way" TEXT NOT NULL,
    "leg" TEXT NOT NULL,
    "about" TEXT NOT NULL,
    "openedAt" DATETIME NOT NULL,

    PRIMARY KEY ("workspaceId", "code"),
    CONSTRAINT "Round_workspaceId_fkey" FOREIGN KEY ("workspaceId") REFERENCES "Workspace" ("id") ON DELETE RESTRICT ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "Guess" (
    "workspaceId" TEXT NOT NULL,
    "code" TEXT NOT NULL,
    "device" TEXT NOT NULL,
    "sequence" INTEGER NOT NULL,
    "low" REAL NOT NULL,
    "likely" REAL NOT NULL,
    "high" REAL NOT NULL,
    "givenAt" DATETIME NOT NULL,

    PRIMARY KEY ("workspaceId", "code", "device", "sequence"),
    CONSTRAINT "Guess_workspaceId_code_fkey" FOREIGN KEY ("workspaceId", "code") REFERENCES "Round" ("workspaceId", "code") ON DELETE RESTRICT ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "RoundClosing" (
    "workspaceId" TEXT NOT NULL,
    "code" TEXT NOT NULL,
    "closedAt" DATETIME NOT NULL,

    PRIMARY KEY ("workspaceId", "code"),
    CONSTRAINT "RoundClosing_workspaceId_code_fkey" FOREIGN KEY ("workspaceId", "code") REFERENCES "Round" ("workspaceId", "code") ON DELETE RESTRICT ON UPDATE CASCADE
);

-- CreateIndex
CREATE INDEX "Round_workspaceId_sheet_idx" ON "Round"("workspaceId", "sheet");
