-- CreateTable
CREATE TABLE "Job" (
    "workspaceId" TEXT NOT NULL,
    "id" TEXT NOT NULL,
    "kind" TEXT NOT NULL,
    "name" TEXT,
    "state" TEXT NOT NULL,
    "request" TEXT NOT NULL,
    "askedAt" DATETIME NOT NULL,
    "startedAt" DATETIME,
    "endedAt" DATETIME,
    "done" INTEGER NOT NULL DEFAULT 0,
    "total" INTEGER,
    "replaced" INTEGER NOT NULL DEFAULT 0,
    "failure" TEXT,
    "result" TEXT,

    PRIMARY KEY ("workspaceId", "id"),
    CONSTRAINT "Job_workspaceId_fkey" FOREIGN KEY ("workspaceId") REFERENCES "Workspace" ("id") ON DELETE RESTRICT ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "JobEvent" (
    "workspaceId" TEXT NOT NULL,
    "job" TEXT NOT NULL,
    "sequence" INTEGER NOT NULL,
    "kind" TEXT NOT NULL,
    "at" DATETIME NOT NULL,

    PRIMARY KEY ("workspaceId", "job", "sequence"),
    CONSTRAINT "JobEvent_workspaceId_job_fkey" FOREIGN KEY ("workspaceId", "job") REFERENCES "Job" ("workspaceId", "id") ON DELETE CASCADE ON UPDATE CASCADE
);

-- CreateIndex
CREATE INDEX "Job_workspaceId_askedAt_idx" ON "Job"("workspaceId", "askedAt");
