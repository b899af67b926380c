-- The shoreline that a count folder may bring along: drawn under the sections, only ever read whole,
-- so it is JSON of the count itself; counts from before have none.

ALTER TABLE "count" ADD COLUMN "shoreline" TEXT NOT NULL DEFAULT '[]' CHECK (json_type("shoreline") = 'array');
