-- What it was like to count, which a tally may say; tallies from before say nothing of it.

ALTER TABLE "tally" ADD COLUMN "conditions" TEXT CHECK ("conditions" IS NULL OR json_type("conditions") = 'object');
