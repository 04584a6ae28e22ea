-- CreateTable
CREATE TABLE "AgreedPlan" (
    "sequence" INTEGER NOT NULL PRIMARY KEY AUTOINCREMENT,
    "workspaceId" TEXT NOT NULL,
    "event" TEXT NOT NULL,
    "match" TEXT NOT NULL,
    "id" TEXT NOT NULL,
    "agreedAt" DATETIME NOT NULL,
    "person" TEXT,
    "madeFrom" TEXT NOT NULL,
    "body" TEXT NOT NULL,
    CONSTRAINT "AgreedPlan_workspaceId_fkey" FOREIGN KEY ("workspaceId") REFERENCES "Workspace" ("id") ON DELETE RESTRICT ON UPDATE CASCADE
);

-- CreateIndex
CREATE INDEX "AgreedPlan_workspaceId_event_match_sequence_idx" ON "AgreedPlan"("workspaceId", "event", "match", "sequence");

-- CreateIndex
CREATE UNIQUE INDEX "AgreedPlan_workspaceId_event_id_key" ON "AgreedPlan"("workspaceId", "event", "id");
