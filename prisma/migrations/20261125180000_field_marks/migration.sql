-- Field marks noted for tally lines, which a count folder may bring along. They are only ever read
-- whole, so they are JSON of the count itself; counts from before have none.

ALTER TABLE "count" ADD COLUMN "marks" TEXT NOT NULL DEFAULT '[]' CHECK (json_type("marks") = 'array');
