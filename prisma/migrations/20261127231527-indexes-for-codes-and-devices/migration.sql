-- CreateIndex
CREATE INDEX "QuarantinedRecord_workspaceId_device_idx" ON "QuarantinedRecord"("workspaceId", "device");

-- CreateIndex
CREATE INDEX "Round_code_idx" ON "Round"("code");
