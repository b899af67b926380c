-- What was seen of a tally's sections, as it was drawn on the map; tallies from before have nothing drawn.

ALTER TABLE "tally" ADD COLUMN "seenArea" TEXT CHECK ("seenArea" IS NULL OR json_type("seenArea") = 'array');
