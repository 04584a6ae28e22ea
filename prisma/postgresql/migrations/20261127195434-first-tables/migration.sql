-- CreateTable
CREATE TABLE "Workspace" (
    "id" TEXT COLLATE "C" NOT NULL,
    "name" TEXT COLLATE "C" NOT NULL,
    "createdAt" TIMESTAMP(3) NOT NULL,

    CONSTRAINT "Workspace_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "Document" (
    "workspaceId" TEXT COLLATE "C" NOT NULL,
    "kind" TEXT COLLATE "C" NOT NULL,
    "id" TEXT COLLATE "C" NOT NULL,
    "name" TEXT COLLATE "C" NOT NULL,
    "revision" INTEGER NOT NULL,
    "savedAt" TIMESTAMP(3) NOT NULL,
    "removed" BOOLEAN NOT NULL DEFAULT false,

    CONSTRAINT "Document_pkey" PRIMARY KEY ("workspaceId","kind","id")
);

-- CreateTable
CREATE TABLE "Revision" (
    "workspaceId" TEXT COLLATE "C" NOT NULL,
    "kind" TEXT COLLATE "C" NOT NULL,
    "id" TEXT COLLATE "C" NOT NULL,
    "revision" INTEGER NOT NULL,
    "name" TEXT COLLATE "C" NOT NULL,
    "body" TEXT COLLATE "C" NOT NULL,
    "note" TEXT COLLATE "C",
    "savedAt" TIMESTAMP(3) NOT NULL,

    CONSTRAINT "Revision_pkey" PRIMARY KEY ("workspaceId","kind","id","revision")
);

-- CreateTable
CREATE TABLE "Round" (
    "workspaceId" TEXT COLLATE "C" NOT NULL,
    "code" TEXT COLLATE "C" NOT NULL,
    "sheet" TEXT COLLATE "C" NOT NULL,
    "way" TEXT COLLATE "C" NOT NULL,
    "leg" TEXT COLLATE "C" NOT NULL,
    "about" TEXT COLLATE "C" NOT NULL,
    "openedAt" TIMESTAMP(3) NOT NULL,
    "closingKeyHash" TEXT COLLATE "C",
    "broughtAt" TIMESTAMP(3),
    "removed" BOOLEAN NOT NULL DEFAULT false,

    CONSTRAINT "Round_pkey" PRIMARY KEY ("workspaceId","code")
);

-- CreateTable
CREATE TABLE "Guess" (
    "workspaceId" TEXT COLLATE "C" NOT NULL,
    "code" TEXT COLLATE "C" NOT NULL,
    "device" TEXT COLLATE "C" NOT NULL,
    "sequence" INTEGER NOT NULL,
    "low" DOUBLE PRECISION NOT NULL,
    "likely" DOUBLE PRECISION NOT NULL,
    "high" DOUBLE PRECISION NOT NULL,
    "givenAt" TIMESTAMP(3) NOT NULL,

    CONSTRAINT "Guess_pkey" PRIMARY KEY ("workspaceId","code","device","sequence")
);

-- CreateTable
CREATE TABLE "RoundArrival" (
    "workspaceId" TEXT COLLATE "C" NOT NULL,
    "code" TEXT COLLATE "C" NOT NULL,
    "device" TEXT COLLATE "C" NOT NULL,
    "arrivedAt" TIMESTAMP(3) NOT NULL,

    CONSTRAINT "RoundArrival_pkey" PRIMARY KEY ("workspaceId","code","device")
);

-- CreateTable
CREATE TABLE "RoundClosing" (
    "workspaceId" TEXT COLLATE "C" NOT NULL,
    "code" TEXT COLLATE "C" NOT NULL,
    "closedAt" TIMESTAMP(3) NOT NULL,
    "anyway" BOOLEAN NOT NULL DEFAULT false,

    CONSTRAINT "RoundClosing_pkey" PRIMARY KEY ("workspaceId","code")
);

-- CreateTable
CREATE TABLE "Job" (
    "workspaceId" TEXT COLLATE "C" NOT NULL,
    "id" TEXT COLLATE "C" NOT NULL,
    "kind" TEXT COLLATE "C" NOT NULL,
    "name" TEXT COLLATE "C",
    "state" TEXT COLLATE "C" NOT NULL,
    "request" TEXT COLLATE "C" NOT NULL,
    "askedAt" TIMESTAMP(3) NOT NULL,
    "startedAt" TIMESTAMP(3),
    "endedAt" TIMESTAMP(3),
    "done" INTEGER NOT NULL DEFAULT 0,
    "total" INTEGER,
    "replaced" INTEGER NOT NULL DEFAULT 0,
    "failure" TEXT COLLATE "C",
    "result" TEXT COLLATE "C",

    CONSTRAINT "Job_pkey" PRIMARY KEY ("workspaceId","id")
);

-- CreateTable
CREATE TABLE "JobEvent" (
    "workspaceId" TEXT COLLATE "C" NOT NULL,
    "job" TEXT COLLATE "C" NOT NULL,
    "sequence" INTEGER NOT NULL,
    "kind" TEXT COLLATE "C" NOT NULL,
    "at" TIMESTAMP(3) NOT NULL,

    CONSTRAINT "JobEvent_pkey" PRIMARY KEY ("workspaceId","job","sequence")
);

-- CreateTable
CREATE TABLE "Person" (
    "workspaceId" TEXT COLLATE "C" NOT NULL,
    "id" TEXT COLLATE "C" NOT NULL,
    "nickname" TEXT COLLATE "C" NOT NULL,
    "role" TEXT COLLATE "C" NOT NULL,
    "passphraseHash" TEXT COLLATE "C",
    "createdAt" TIMESTAMP(3) NOT NULL,
    "endedAt" TIMESTAMP(3),

    CONSTRAINT "Person_pkey" PRIMARY KEY ("workspaceId","id")
);

-- CreateTable
CREATE TABLE "Device" (
    "workspaceId" TEXT COLLATE "C" NOT NULL,
    "id" TEXT COLLATE "C" NOT NULL,
    "person" TEXT COLLATE "C" NOT NULL,
    "name" TEXT COLLATE "C" NOT NULL,
    "tokenHash" TEXT COLLATE "C" NOT NULL,
    "createdAt" TIMESTAMP(3) NOT NULL,
    "lastSeenAt" TIMESTAMP(3) NOT NULL,
    "unsent" INTEGER NOT NULL DEFAULT 0,
    "app" TEXT COLLATE "C",
    "revokedAt" TIMESTAMP(3),

    CONSTRAINT "Device_pkey" PRIMARY KEY ("workspaceId","id")
);

-- CreateTable
CREATE TABLE "Invitation" (
    "workspaceId" TEXT COLLATE "C" NOT NULL,
    "id" TEXT COLLATE "C" NOT NULL,
    "tokenHash" TEXT COLLATE "C" NOT NULL,
    "role" TEXT COLLATE "C" NOT NULL,
    "nickname" TEXT COLLATE "C",
    "event" TEXT COLLATE "C",
    "createdBy" TEXT COLLATE "C",
    "createdAt" TIMESTAMP(3) NOT NULL,
    "expiresAt" TIMESTAMP(3) NOT NULL,
    "usedAt" TIMESTAMP(3),
    "usedBy" TEXT COLLATE "C",
    "withdrawnAt" TIMESTAMP(3),

    CONSTRAINT "Invitation_pkey" PRIMARY KEY ("workspaceId","id")
);

-- CreateTable
CREATE TABLE "ClaimLink" (
    "tokenHash" TEXT COLLATE "C" NOT NULL,
    "workspaceId" TEXT COLLATE "C" NOT NULL,
    "createdAt" TIMESTAMP(3) NOT NULL,
    "expiresAt" TIMESTAMP(3) NOT NULL,
    "usedAt" TIMESTAMP(3),

    CONSTRAINT "ClaimLink_pkey" PRIMARY KEY ("tokenHash")
);

-- CreateTable
CREATE TABLE "AuditEntry" (
    "sequence" SERIAL NOT NULL,
    "workspaceId" TEXT COLLATE "C" NOT NULL,
    "at" TIMESTAMP(3) NOT NULL,
    "person" TEXT COLLATE "C",
    "device" TEXT COLLATE "C",
    "action" TEXT COLLATE "C" NOT NULL,
    "subject" TEXT COLLATE "C" NOT NULL,
    "detail" TEXT COLLATE "C" NOT NULL,

    CONSTRAINT "AuditEntry_pkey" PRIMARY KEY ("sequence")
);

-- CreateTable
CREATE TABLE "ScheduledMatch" (
    "workspaceId" TEXT COLLATE "C" NOT NULL,
    "event" TEXT COLLATE "C" NOT NULL,
    "id" TEXT COLLATE "C" NOT NULL,
    "phase" TEXT COLLATE "C" NOT NULL,
    "number" INTEGER NOT NULL,
    "play" INTEGER NOT NULL,
    "body" TEXT COLLATE "C" NOT NULL,
    "revision" INTEGER NOT NULL,
    "changedAt" TIMESTAMP(3) NOT NULL,
    "removed" BOOLEAN NOT NULL DEFAULT false,

    CONSTRAINT "ScheduledMatch_pkey" PRIMARY KEY ("workspaceId","event","id")
);

-- CreateTable
CREATE TABLE "OfficialResult" (
    "workspaceId" TEXT COLLATE "C" NOT NULL,
    "event" TEXT COLLATE "C" NOT NULL,
    "match" TEXT COLLATE "C" NOT NULL,
    "revision" INTEGER NOT NULL,
    "body" TEXT COLLATE "C",
    "enteredAt" TIMESTAMP(3) NOT NULL,
    "person" TEXT COLLATE "C",

    CONSTRAINT "OfficialResult_pkey" PRIMARY KEY ("workspaceId","event","match","revision")
);

-- CreateTable
CREATE TABLE "SeatAssignment" (
    "workspaceId" TEXT COLLATE "C" NOT NULL,
    "event" TEXT COLLATE "C" NOT NULL,
    "match" TEXT COLLATE "C" NOT NULL,
    "alliance" TEXT COLLATE "C" NOT NULL,
    "position" INTEGER NOT NULL,
    "person" TEXT COLLATE "C",
    "since" TIMESTAMP(3) NOT NULL,

    CONSTRAINT "SeatAssignment_pkey" PRIMARY KEY ("workspaceId","event","match","alliance","position")
);

-- CreateTable
CREATE TABLE "FieldRecord" (
    "arrival" SERIAL NOT NULL,
    "workspaceId" TEXT COLLATE "C" NOT NULL,
    "id" TEXT COLLATE "C" NOT NULL,
    "event" TEXT COLLATE "C" NOT NULL,
    "kind" TEXT COLLATE "C" NOT NULL,
    "match" TEXT COLLATE "C",
    "team" TEXT COLLATE "C",
    "alliance" TEXT COLLATE "C",
    "position" INTEGER,
    "identifiedBy" TEXT COLLATE "C",
    "device" TEXT COLLATE "C" NOT NULL,
    "sequence" INTEGER NOT NULL,
    "scout" TEXT COLLATE "C" NOT NULL,
    "person" TEXT COLLATE "C",
    "replaces" TEXT COLLATE "C",
    "hash" TEXT COLLATE "C" NOT NULL,
    "body" TEXT COLLATE "C" NOT NULL,
    "receivedAt" TIMESTAMP(3) NOT NULL,

    CONSTRAINT "FieldRecord_pkey" PRIMARY KEY ("arrival")
);

-- CreateTable
CREATE TABLE "QuarantinedRecord" (
    "arrival" SERIAL NOT NULL,
    "workspaceId" TEXT COLLATE "C" NOT NULL,
    "id" TEXT COLLATE "C" NOT NULL,
    "event" TEXT COLLATE "C" NOT NULL,
    "device" TEXT COLLATE "C" NOT NULL,
    "person" TEXT COLLATE "C",
    "hash" TEXT COLLATE "C" NOT NULL,
    "body" TEXT COLLATE "C" NOT NULL,
    "reason" TEXT COLLATE "C" NOT NULL,
    "receivedAt" TIMESTAMP(3) NOT NULL,
    "resolution" TEXT COLLATE "C",
    "resolvedAt" TIMESTAMP(3),
    "resolvedBy" TEXT COLLATE "C",

    CONSTRAINT "QuarantinedRecord_pkey" PRIMARY KEY ("arrival")
);

-- CreateTable
CREATE TABLE "RecordChoice" (
    "sequence" SERIAL NOT NULL,
    "workspaceId" TEXT COLLATE "C" NOT NULL,
    "event" TEXT COLLATE "C" NOT NULL,
    "match" TEXT COLLATE "C" NOT NULL,
    "team" TEXT COLLATE "C" NOT NULL,
    "record" TEXT COLLATE "C",
    "person" TEXT COLLATE "C",
    "reason" TEXT COLLATE "C",
    "chosenAt" TIMESTAMP(3) NOT NULL,

    CONSTRAINT "RecordChoice_pkey" PRIMARY KEY ("sequence")
);

-- CreateTable
CREATE TABLE "Drill" (
    "workspaceId" TEXT COLLATE "C" NOT NULL,
    "event" TEXT COLLATE "C" NOT NULL,
    "id" TEXT COLLATE "C" NOT NULL,
    "startedAt" TIMESTAMP(3) NOT NULL,
    "endedAt" TIMESTAMP(3),
    "startedBy" TEXT COLLATE "C",

    CONSTRAINT "Drill_pkey" PRIMARY KEY ("workspaceId","event","id")
);

-- CreateTable
CREATE TABLE "Forecast" (
    "sequence" SERIAL NOT NULL,
    "workspaceId" TEXT COLLATE "C" NOT NULL,
    "event" TEXT COLLATE "C" NOT NULL,
    "match" TEXT COLLATE "C" NOT NULL,
    "id" TEXT COLLATE "C" NOT NULL,
    "madeAt" TIMESTAMP(3) NOT NULL,
    "madeFrom" TEXT COLLATE "C" NOT NULL,
    "version" INTEGER NOT NULL,
    "body" TEXT COLLATE "C" NOT NULL,

    CONSTRAINT "Forecast_pkey" PRIMARY KEY ("sequence")
);

-- CreateTable
CREATE TABLE "NamedPerson" (
    "workspaceId" TEXT COLLATE "C" NOT NULL,
    "id" TEXT COLLATE "C" NOT NULL,
    "nickname" TEXT COLLATE "C" NOT NULL,

    CONSTRAINT "NamedPerson_pkey" PRIMARY KEY ("workspaceId","id")
);

-- CreateIndex
CREATE UNIQUE INDEX "Workspace_name_key" ON "Workspace"("name");

-- CreateIndex
CREATE INDEX "Round_workspaceId_sheet_idx" ON "Round"("workspaceId", "sheet");

-- CreateIndex
CREATE INDEX "Job_workspaceId_askedAt_idx" ON "Job"("workspaceId", "askedAt");

-- CreateIndex
CREATE UNIQUE INDEX "Person_workspaceId_nickname_key" ON "Person"("workspaceId", "nickname");

-- CreateIndex
CREATE UNIQUE INDEX "Device_tokenHash_key" ON "Device"("tokenHash");

-- CreateIndex
CREATE INDEX "Device_workspaceId_person_idx" ON "Device"("workspaceId", "person");

-- CreateIndex
CREATE UNIQUE INDEX "Invitation_tokenHash_key" ON "Invitation"("tokenHash");

-- CreateIndex
CREATE INDEX "AuditEntry_workspaceId_sequence_idx" ON "AuditEntry"("workspaceId", "sequence");

-- CreateIndex
CREATE INDEX "ScheduledMatch_workspaceId_event_phase_number_play_idx" ON "ScheduledMatch"("workspaceId", "event", "phase", "number", "play");

-- CreateIndex
CREATE INDEX "FieldRecord_workspaceId_event_arrival_idx" ON "FieldRecord"("workspaceId", "event", "arrival");

-- CreateIndex
CREATE INDEX "FieldRecord_workspaceId_event_match_idx" ON "FieldRecord"("workspaceId", "event", "match");

-- CreateIndex
CREATE INDEX "FieldRecord_workspaceId_device_idx" ON "FieldRecord"("workspaceId", "device");

-- CreateIndex
CREATE UNIQUE INDEX "FieldRecord_workspaceId_id_key" ON "FieldRecord"("workspaceId", "id");

-- CreateIndex
CREATE INDEX "QuarantinedRecord_workspaceId_event_idx" ON "QuarantinedRecord"("workspaceId", "event");

-- CreateIndex
CREATE UNIQUE INDEX "QuarantinedRecord_workspaceId_id_hash_key" ON "QuarantinedRecord"("workspaceId", "id", "hash");

-- CreateIndex
CREATE INDEX "RecordChoice_workspaceId_event_match_team_idx" ON "RecordChoice"("workspaceId", "event", "match", "team");

-- CreateIndex
CREATE INDEX "Forecast_workspaceId_event_match_sequence_idx" ON "Forecast"("workspaceId", "event", "match", "sequence");

-- CreateIndex
CREATE UNIQUE INDEX "Forecast_workspaceId_event_id_key" ON "Forecast"("workspaceId", "event", "id");

-- AddForeignKey
ALTER TABLE "Document" ADD CONSTRAINT "Document_workspaceId_fkey" FOREIGN KEY ("workspaceId") REFERENCES "Workspace"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Revision" ADD CONSTRAINT "Revision_workspaceId_kind_id_fkey" FOREIGN KEY ("workspaceId", "kind", "id") REFERENCES "Document"("workspaceId", "kind", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Round" ADD CONSTRAINT "Round_workspaceId_fkey" FOREIGN KEY ("workspaceId") REFERENCES "Workspace"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Guess" ADD CONSTRAINT "Guess_workspaceId_code_fkey" FOREIGN KEY ("workspaceId", "code") REFERENCES "Round"("workspaceId", "code") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "RoundArrival" ADD CONSTRAINT "RoundArrival_workspaceId_code_fkey" FOREIGN KEY ("workspaceId", "code") REFERENCES "Round"("workspaceId", "code") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "RoundClosing" ADD CONSTRAINT "RoundClosing_workspaceId_code_fkey" FOREIGN KEY ("workspaceId", "code") REFERENCES "Round"("workspaceId", "code") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Job" ADD CONSTRAINT "Job_workspaceId_fkey" FOREIGN KEY ("workspaceId") REFERENCES "Workspace"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "JobEvent" ADD CONSTRAINT "JobEvent_workspaceId_job_fkey" FOREIGN KEY ("workspaceId", "job") REFERENCES "Job"("workspaceId", "id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Person" ADD CONSTRAINT "Person_workspaceId_fkey" FOREIGN KEY ("workspaceId") REFERENCES "Workspace"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Device" ADD CONSTRAINT "Device_workspaceId_person_fkey" FOREIGN KEY ("workspaceId", "person") REFERENCES "Person"("workspaceId", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Invitation" ADD CONSTRAINT "Invitation_workspaceId_fkey" FOREIGN KEY ("workspaceId") REFERENCES "Workspace"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "ClaimLink" ADD CONSTRAINT "ClaimLink_workspaceId_fkey" FOREIGN KEY ("workspaceId") REFERENCES "Workspace"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "AuditEntry" ADD CONSTRAINT "AuditEntry_workspaceId_fkey" FOREIGN KEY ("workspaceId") REFERENCES "Workspace"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "ScheduledMatch" ADD CONSTRAINT "ScheduledMatch_workspaceId_fkey" FOREIGN KEY ("workspaceId") REFERENCES "Workspace"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "OfficialResult" ADD CONSTRAINT "OfficialResult_workspaceId_event_match_fkey" FOREIGN KEY ("workspaceId", "event", "match") REFERENCES "ScheduledMatch"("workspaceId", "event", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "SeatAssignment" ADD CONSTRAINT "SeatAssignment_workspaceId_event_match_fkey" FOREIGN KEY ("workspaceId", "event", "match") REFERENCES "ScheduledMatch"("workspaceId", "event", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "FieldRecord" ADD CONSTRAINT "FieldRecord_workspaceId_fkey" FOREIGN KEY ("workspaceId") REFERENCES "Workspace"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "QuarantinedRecord" ADD CONSTRAINT "QuarantinedRecord_workspaceId_fkey" FOREIGN KEY ("workspaceId") REFERENCES "Workspace"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "RecordChoice" ADD CONSTRAINT "RecordChoice_workspaceId_fkey" FOREIGN KEY ("workspaceId") REFERENCES "Workspace"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Drill" ADD CONSTRAINT "Drill_workspaceId_fkey" FOREIGN KEY ("workspaceId") REFERENCES "Workspace"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "Forecast" ADD CONSTRAINT "Forecast_workspaceId_fkey" FOREIGN KEY ("workspaceId") REFERENCES "Workspace"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "NamedPerson" ADD CONSTRAINT "NamedPerson_workspaceId_fkey" FOREIGN KEY ("workspaceId") REFERENCES "Workspace"("id") ON DELETE RESTRICT ON UPDATE CASCADE;
