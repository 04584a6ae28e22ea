-- CreateTable
CREATE TABLE "NamedPerson" (
    "workspaceId" TEXT NOT NULL,
    "id" TEXT NOT NULL,
    "nickname" TEXT NOT NULL,

    PRIMARY KEY ("workspaceId", "id"),
    CONSTRAINT "NamedPerson_workspaceId_fkey" FOREIGN KEY ("workspaceId") REFERENCES "Workspace" ("id") ON DELETE RESTRICT ON UPDATE CASCADE
);
