-- CreateTable
CREATE TABLE "Workspace" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "name" TEXT NOT NULL,
    "createdAt" DATETIME NOT NULL
);

-- CreateTable
CREATE TABLE "Document" (
    "workspaceId" TEXT NOT NULL,
    "kind" TEXT NOT NULL,
    "id" TEXT NOT NULL,
    "name" TEXT NOT NULL,
    "revision" INTEGER NOT NULL,
    "savedAt" DATETIME NOT NULL,
    "removed" BOOLEAN NOT NULL DEFAULT false,

    PRIMARY KEY ("workspaceId", "kind", "id"),
    CONSTRAINT "Document_workspaceId_fkey" FOREIGN KEY ("workspaceId") REFERENCES "Workspace" ("id") ON DELETE RESTRICT ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "Revision" (
    "workspaceId" TEXT NOT NULL,
    "kind" TEXT NOT NULL,
    "id" TEXT NOT NULL,
    "revision" INTEGER NOT NULL,
    "name" TEXT NOT NULL,
    "body" TEXT NOT NULL,
    "note" TEXT,
    "savedAt" DATETIME NOT NULL,

    PRIMARY KEY ("workspaceId", "kind", "id", "revision"),
    CONSTRAINT "Revision_workspaceId_kind_id_fkey" FOREIGN KEY ("workspaceId", "kind", "id") REFERENCES "Document" ("workspaceId", "kind", "id") ON DELETE RESTRICT ON UPDATE CASCADE
);

-- CreateIndex
CREATE UNIQUE INDEX "Workspace_name_key" ON "Workspace"("name");
