-- CreateTable
CREATE TABLE "Person" (
    "workspaceId" TEXT NOT NULL,
    "id" TEXT NOT NULL,
    "nickname" TEXT NOT NULL,
    "role" TEXT NOT NULL,
    "passphraseHash" TEXT,
    "createdAt" DATETIME NOT NULL,
    "endedAt" DATETIME,

    PRIMARY KEY ("workspaceId", "id"),
    CONSTRAINT "Person_workspaceId_fkey" FOREIGN KEY ("workspaceId") REFERENCES "Workspace" ("id") ON DELETE RESTRICT ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "Device" (
    "workspaceId" TEXT NOT NULL,
    "id" TEXT NOT NULL,
    "person" TEXT NOT NULL,
    "name" TEXT NOT NULL,
    "tokenHash" TEXT NOT NULL,
    "createdAt" DATETIME NOT NULL,
    "lastSeenAt" DATETIME NOT NULL,
    "unsent" INTEGER NOT NULL DEFAULT 0,
    "app" TEXT,
    "revokedAt" DATETIME,

    PRIMARY KEY ("workspaceId", "id"),
    CONSTRAINT "Device_workspaceId_person_fkey" FOREIGN KEY ("workspaceId", "person") REFERENCES "Person" ("workspaceId", "id") ON DELETE RESTRICT ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "Invitation" (
    "workspaceId" TEXT NOT NULL,
    "id" TEXT NOT NULL,
    "tokenHash" TEXT NOT NULL,
    "role" TEXT NOT NULL,
    "nickname" TEXT,
    "event" TEXT,
    "createdBy" TEXT,
    "createdAt" DATETIME NOT NULL,
    "expiresAt" DATETIME NOT NULL,
    "usedAt" DATETIME,
    "usedBy" TEXT,
    "withdrawnAt" DATETIME,

    PRIMARY KEY ("workspaceId", "id"),
    CONSTRAINT "Invitation_workspaceId_fkey" FOREIGN KEY ("workspaceId") REFERENCES "Workspace" ("id") ON DELETE RESTRICT ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "ClaimLink" (
    "tokenHash" TEXT NOT NULL PRIMARY KEY,
    "workspaceId" TEXT NOT NULL,
    "createdAt" DATETIME NOT NULL,
    "expiresAt" DATETIME NOT NULL,
    "usedAt" DATETIME,
    CONSTRAINT "ClaimLink_workspaceId_fkey" FOREIGN KEY ("workspaceId") REFERENCES "Workspace" ("id") ON DELETE RESTRICT ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "AuditEntry" (
    "sequence" INTEGER NOT NULL PRIMARY KEY AUTOINCREMENT,
    "workspaceId" TEXT NOT NULL,
    "at" DATETIME NOT NULL,
    "person" TEXT,
    "device" TEXT,
    "action" TEXT NOT NULL,
    "subject" TEXT NOT NULL,
    "detail" TEXT NOT NULL,
    CONSTRAINT "AuditEntry_workspaceId_fkey" FOREIGN KEY ("workspaceId") REFERENCES "Workspace" ("id") ON DELETE RESTRICT ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "ScheduledMatch" (
    "workspaceId" TEXT NOT NULL,
    "event" TEXT NOT NULL,
    "id" TEXT NOT NULL,
    "phase" TEXT NOT NULL,
    "number" INTEGER NOT NULL,
    "play" INTEGER NOT NULL,
    "body" TEXT NOT NULL,
    "revision" INTEGER NOT NULL,
    "changedAt" DATETIME NOT NULL,
    "removed" BOOLEAN NOT NULL DEFAULT false,

    PRIMARY KEY ("workspaceId", "event", "id"),
    CONSTRAINT "ScheduledMatch_workspaceId_fkey" FOREIGN KEY ("workspaceId") REFERENCES "Workspace" ("id") ON DELETE RESTRICT ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "OfficialResult" (
    "workspaceId" TEXT NOT NULL,
    "event" TEXT NOT NULL,
    "match" TEXT NOT NULL,
    "revision" INTEGER NOT NULL,
    "body" TEXT,
    "enteredAt" DATETIME NOT NULL,
    "person" TEXT,

    PRIMARY KEY ("workspaceId", "event", "match", "revision"),
    CONSTRAINT "OfficialResult_workspaceId_event_match_fkey" FOREIGN KEY ("workspaceId", "event", "match") REFERENCES "ScheduledMatch" ("workspaceId", "event", "id") ON DELETE RESTRICT ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "SeatAssignment" (
    "workspaceId" TEXT NOT NULL,
    "event" TEXT NOT NULL,
    "match" TEXT NOT NULL,
    "alliance" TEXT NOT NULL,
    "position" INTEGER NOT NULL,
    "person" TEXT,
    "since" DATETIME NOT NULL,

    PRIMARY KEY ("workspaceId", "event", "match", "alliance", "position"),
    CONSTRAINT "SeatAssignment_workspaceId_event_match_fkey" FOREIGN KEY ("workspaceId", "event", "match") REFERENCES "ScheduledMatch" ("workspaceId", "event", "id") ON DELETE RESTRICT ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "FieldRecord" (
    "arrival" INTEGER NOT NULL PRIMARY KEY AUTOINCREMENT,
    "workspaceId" TEXT NOT NULL,
    "id" TEXT NOT NULL,
    "event" TEXT NOT NULL,
    "kind" TEXT NOT NULL,
    "match" TEXT,
    "team" TEXT,
    "alliance" TEXT,
    "position" INTEGER,
    "identifiedBy" TEXT,
    "device" TEXT NOT NULL,
    "sequence" INTEGER NOT NULL,
    "scout" TEXT NOT NULL,
    "person" TEXT,
    "replaces" TEXT,
    "hash" TEXT NOT NULL,
    "body" TEXT NOT NULL,
    "receivedAt" DATETIME NOT NULL,
    CONSTRAINT "FieldRecord_workspaceId_fkey" FOREIGN KEY ("workspaceId") REFERENCES "Workspace" ("id") ON DELETE RESTRICT ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "QuarantinedRecord" (
    "arrival" INTEGER NOT NULL PRIMARY KEY AUTOINCREMENT,
    "workspaceId" TEXT NOT NULL,
    "id" TEXT NOT NULL,
    "event" TEXT NOT NULL,
    "device" TEXT NOT NULL,
    "person" TEXT,
    "hash" TEXT NOT NULL,
    "body" TEXT NOT NULL,
    "reason" TEXT NOT NULL,
    "receivedAt" DATETIME NOT NULL,
    "resolution" TEXT,
    "resolvedAt" DATETIME,
    "resolvedBy" TEXT,
    CONSTRAINT "QuarantinedRecord_workspaceId_fkey" FOREIGN KEY ("workspaceId") REFERENCES "Workspace" ("id") ON DELETE RESTRICT ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "RecordChoice" (
    "sequence" INTEGER NOT NULL PRIMARY KEY AUTOINCREMENT,
    "workspaceId" TEXT NOT NULL,
    "event" TEXT NOT NULL,
    "match" TEXT NOT NULL,
    "team" TEXT NOT NULL,
    "record" TEXT,
    "person" TEXT,
    "reason" TEXT,
    "chosenAt" DATETIME NOT NULL,
    CONSTRAINT "RecordChoice_workspaceId_fkey" FOREIGN KEY ("workspaceId") REFERENCES "Workspace" ("id") ON DELETE RESTRICT ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "Drill" (
    "workspaceId" TEXT NOT NULL,
    "event" TEXT NOT NULL,
    "id" TEXT NOT NULL,
    "startedAt" DATETIME NOT NULL,
    "endedAt" DATETIME,
    "startedBy" TEXT,

    PRIMARY KEY ("workspaceId", "event", "id"),
    CONSTRAINT "Drill_workspaceId_fkey" FOREIGN KEY ("workspaceId") REFERENCES "Workspace" ("id") ON DELETE RESTRICT ON UPDATE CASCADE
);

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
