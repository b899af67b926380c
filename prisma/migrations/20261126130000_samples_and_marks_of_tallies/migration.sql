-- Small counts made inside rafts, and field marks noted for lines, that come with a tally. They are only
-- ever read whole, so they are JSON of the tally itself; tallies from before have neither.

ALTER TABLE "tally" ADD COLUMN "samples" TEXT NOT NULL DEFAULT '[]' CHECK (json_type("samples") = 'array');

ALTER TABLE "tally" ADD COLUMN "marks" TEXT NOT NULL DEFAULT '[]' CHECK (json_type("marks") = 'array');
