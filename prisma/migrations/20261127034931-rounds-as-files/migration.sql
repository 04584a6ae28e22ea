-- AlterTable
ALTER TABLE "Round" ADD COLUMN "broughtAt" DATETIME;
ALTER TABLE "Round" ADD COLUMN "removed" BOOLEAN NOT NULL DEFAULT false;

-- AlterTable
ALTER TABLE "RoundClosing" ADD COLUMN "anyway" BOOLEAN NOT NULL DEFAULT false;
