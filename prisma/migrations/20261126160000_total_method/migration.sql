-- How the birds of a whole raft were counted, on lines made from its scan samples; lines from before say
-- nothing of it.

ALTER TABLE "tally_line" ADD COLUMN "totalMethod" TEXT CHECK ("totalMethod" IS NULL OR ("method" = 'sample' AND "totalMethod" IN ('block', 'one-by-one', 'guess')));
