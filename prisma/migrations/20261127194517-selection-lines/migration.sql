-- CreateTable
CREATE TABLE "SelectionLine" (
    "sequence" INTEGER NOT NULL PRIMARY KEY AUTOINCREMENT,
    "workspaceId" TEXT NOT NULL,
    "event" TEXT NOT NULL,
    "id" TEXT NOT NULL,
    "topic" TEXT NOT NULL,
    "body" TEXT NOT NULL,
    "person" TEXT,
    "writtenAt" DATETIME NOT NULL,
    CONSTRAINT "SelectionLine_workspaceId_fkey" FOREIGN KEY ("workspaceId") REFERENCES "Workspace" ("id") ON DELETE RESTRICT ON UPDATE CASCADE
);

-- CreateIndex
CREATE INDEX "SelectionLine_workspaceId_event_sequence_idx" ON "SelectionLine"("workspaceId", "event", "sequence");

-- CreateIndex
CREATE UNIQUE INDEX "SelectionLine_workspaceId_event_id_key" ON "SelectionLine"("workspaceId", "event", "id");
