-- DropIndex
DROP INDEX "FieldRecord_workspaceId_event_match_idx";
