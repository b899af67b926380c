-- Birds of earlier years and small counts made inside rafts, which a count folder may bring along. Both
-- are only ever read whole, so they are JSON of the count itself; counts from before have neither.

ALTER TABLE "count" ADD COLUMN "history" TEXT NOT NULL DEFAULT '[]' CHECK (json_type("history") = 'array');

ALTER TABLE "count" ADD COLUMN "samples" TEXT NOT NULL DEFAULT '[]' CHECK (json_type("samples") = 'array');
