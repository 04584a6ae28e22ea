-- CreateTable
CREATE TABLE "Forecast" (
    "sequence" INTEGER NOT NULL PRIMARY KEY AUTOINCREMENT,
    "workspaceId" TEXT NOT NULL,
    "event" TEXT NOT NULL,
    "match" TEXT NOT NULL,
    "id" TEXT NOT NULL,
    "madeAt" DATETIME NOT NULL,
    "madeFrom" TEXT NOT NULL,
    "version" INTEGER NOT NULL,
    "body" TEXT NOT NULL,
    CONSTRAINT "Forecast_workspaceId_fkey" FOREIGN KEY ("workspaceId") REFERENCES "Workspace" ("id") ON DELETE RESTRICT ON UPDATE CASCADE
);

-- CreateIndex
CREATE INDEX "Forecast_workspaceId_event_match_sequence_idx" ON "Forecast"("workspaceId", "event", "match", "sequence");

-- CreateIndex
CREATE UNIQUE INDEX "Forecast_workspaceId_event_id_key" ON "Forecast"("workspaceId", "event", "id");
