-- CreateTable
CREATE TABLE "AgreedPlan" (
    "sequence" SERIAL NOT NULL,
    "workspaceId" TEXT COLLATE "C" NOT NULL,
    "event" TEXT COLLATE "C" NOT NULL,
    "match" TEXT COLLATE "C" NOT NULL,
    "id" TEXT COLLATE "C" NOT NULL,
    "agreedAt" TIMESTAMP(3) NOT NULL,
    "person" TEXT COLLATE "C",
    "madeFrom" TEXT COLLATE "C" NOT NULL,
    "body" TEXT COLLATE "C" NOT NULL,

    CONSTRAINT "AgreedPlan_pkey" PRIMARY KEY ("sequence")
);

-- CreateTable
CREATE TABLE "SelectionLine" (
    "sequence" SERIAL NOT NULL,
    "workspaceId" TEXT COLLATE "C" NOT NULL,
    "event" TEXT COLLATE "C" NOT NULL,
    "id" TEXT COLLATE "C" NOT NULL,
    "topic" TEXT COLLATE "C" NOT NULL,
    "body" TEXT COLLATE "C" NOT NULL,
    "person" TEXT COLLATE "C",
    "writtenAt" TIMESTAMP(3) NOT NULL,

    CONSTRAINT "SelectionLine_pkey" PRIMARY KEY ("sequence")
);

-- CreateIndex
CREATE INDEX "AgreedPlan_workspaceId_event_match_sequence_idx" ON "AgreedPlan"("workspaceId", "event", "match", "sequence");

-- CreateIndex
CREATE UNIQUE INDEX "AgreedPlan_workspaceId_event_id_key" ON "AgreedPlan"("workspaceId", "event", "id");

-- CreateIndex
CREATE INDEX "SelectionLine_workspaceId_event_sequence_idx" ON "SelectionLine"("workspaceId", "event", "sequence");

-- CreateIndex
CREATE UNIQUE INDEX "SelectionLine_workspaceId_event_id_key" ON "SelectionLine"("workspaceId", "event", "id");

-- AddForeignKey
ALTER TABLE "AgreedPlan" ADD CONSTRAINT "AgreedPlan_workspaceId_fkey" FOREIGN KEY ("workspaceId") REFERENCES "Workspace"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "SelectionLine" ADD CONSTRAINT "SelectionLine_workspaceId_fkey" FOREIGN KEY ("workspaceId") REFERENCES "Workspace"("id") ON DELETE RESTRICT ON UPDATE CASCADE;
