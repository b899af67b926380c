-- The first set of tables. STRICT and CHECK say what schema.prisma cannot; the triggers at the end keep
-- the record of a count append-only and take no more rows for a sealed count.

CREATE TABLE "person" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "name" TEXT NOT NULL,
    "signInName" TEXT,
    "passwordHash" TEXT,
    "mayPlan" INTEGER NOT NULL DEFAULT 0,
    "addedAt" TEXT NOT NULL,
    CHECK ("mayPlan" IN (0, 1))
) STRICT;

CREATE TABLE "session" (
    "tokenHash" TEXT NOT NULL PRIMARY KEY,
    "personId" TEXT NOT NULL,
    "counts" TEXT,
    "openedAt" TEXT NOT NULL,
    "expiresAt" TEXT NOT NULL,
    CONSTRAINT "session_personId_fkey" FOREIGN KEY ("personId") REFERENCES "person" ("id") ON DELETE RESTRICT ON UPDATE CASCADE,
    CHECK ("counts" IS NULL OR json_type("counts") = 'array')
) STRICT;

CREATE TABLE "invite" (
    "tokenHash" TEXT NOT NULL PRIMARY KEY,
    "countId" TEXT NOT NULL,
    "personId" TEXT NOT NULL,
    "madeBy" TEXT NOT NULL,
    "madeAt" TEXT NOT NULL,
    "expiresAt" TEXT NOT NULL,
    "voidedAt" TEXT,
    CONSTRAINT "invite_countId_personId_fkey" FOREIGN KEY ("countId", "personId") REFERENCES "participant" ("countId", "personId") ON DELETE RESTRICT ON UPDATE CASCADE
) STRICT;

CREATE TABLE "count" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "name" TEXT NOT NULL,
    "waterbody" TEXT NOT NULL,
    "date" TEXT NOT NULL,
    "timeZone" TEXT NOT NULL,
    "protocol" TEXT NOT NULL,
    "plannedBy" TEXT NOT NULL,
    "plannedAt" TEXT NOT NULL,
    "contentHash" TEXT NOT NULL,
    CHECK (json_type("protocol") = 'object')
) STRICT;

CREATE TABLE "count_window" (
    "countId" TEXT NOT NULL,
    "id" TEXT NOT NULL,
    "start" TEXT NOT NULL,
    "end" TEXT NOT NULL,
    "slackMinutes" INTEGER NOT NULL,

    PRIMARY KEY ("countId", "id"),
    CONSTRAINT "count_window_countId_fkey" FOREIGN KEY ("countId") REFERENCES "count" ("id") ON DELETE RESTRICT ON UPDATE CASCADE,
    CHECK ("slackMinutes" >= 0)
) STRICT;

CREATE TABLE "window_closing" (
    "countId" TEXT NOT NULL,
    "windowId" TEXT NOT NULL,
    "closedBy" TEXT NOT NULL,
    "closedAt" TEXT NOT NULL,

    PRIMARY KEY ("countId", "windowId"),
    CONSTRAINT "window_closing_countId_windowId_fkey" FOREIGN KEY ("countId", "windowId") REFERENCES "count_window" ("countId", "id") ON DELETE RESTRICT ON UPDATE CASCADE
) STRICT;

CREATE TABLE "section" (
    "countId" TEXT NOT NULL,
    "id" TEXT NOT NULL,
    "name" TEXT NOT NULL,
    "polygon" TEXT NOT NULL,

    PRIMARY KEY ("countId", "id"),
    CONSTRAINT "section_countId_fkey" FOREIGN KEY ("countId") REFERENCES "count" ("id") ON DELETE RESTRICT ON UPDATE CASCADE,
    CHECK (json_type("polygon") = 'array')
) STRICT;

CREATE TABLE "vantage" (
    "countId" TEXT NOT NULL,
    "id" TEXT NOT NULL,
    "name" TEXT NOT NULL,
    "lon" REAL NOT NULL,
    "lat" REAL NOT NULL,

    PRIMARY KEY ("countId", "id"),
    CONSTRAINT "vantage_countId_fkey" FOREIGN KEY ("countId") REFERENCES "count" ("id") ON DELETE RESTRICT ON UPDATE CASCADE,
    CHECK ("lon" BETWEEN -180 AND 180),
    CHECK ("lat" BETWEEN -90 AND 90)
) STRICT;

CREATE TABLE "view" (
    "countId" TEXT NOT NULL,
    "position" INTEGER NOT NULL,
    "vantageId" TEXT NOT NULL,
    "polygon" TEXT NOT NULL,

    PRIMARY KEY ("countId", "position"),
    CONSTRAINT "view_countId_fkey" FOREIGN KEY ("countId") REFERENCES "count" ("id") ON DELETE RESTRICT ON UPDATE CASCADE,
    CHECK (json_type("polygon") = 'array')
) STRICT;

CREATE TABLE "participant" (
    "countId" TEXT NOT NULL,
    "personId" TEXT NOT NULL,
    "roles" TEXT NOT NULL,

    PRIMARY KEY ("countId", "personId"),
    CONSTRAINT "participant_countId_fkey" FOREIGN KEY ("countId") REFERENCES "count" ("id") ON DELETE RESTRICT ON UPDATE CASCADE,
    CONSTRAINT "participant_personId_fkey" FOREIGN KEY ("personId") REFERENCES "person" ("id") ON DELETE RESTRICT ON UPDATE CASCADE,
    CHECK (json_type("roles") = 'array')
) STRICT;

CREATE TABLE "assignment" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "countId" TEXT NOT NULL,
    "personId" TEXT NOT NULL,
    "windowId" TEXT NOT NULL,
    "vantageId" TEXT,
    "sections" TEXT NOT NULL,
    "assignedBy" TEXT NOT NULL,
    "assignedAt" TEXT NOT NULL,
    "contentHash" TEXT NOT NULL,
    CONSTRAINT "assignment_countId_personId_fkey" FOREIGN KEY ("countId", "personId") REFERENCES "participant" ("countId", "personId") ON DELETE RESTRICT ON UPDATE CASCADE,
    CONSTRAINT "assignment_countId_windowId_fkey" FOREIGN KEY ("countId", "windowId") REFERENCES "count_window" ("countId", "id") ON DELETE RESTRICT ON UPDATE CASCADE,
    CHECK (json_array_length("sections") > 0)
) STRICT;

CREATE TABLE "tally" (
    "countId" TEXT NOT NULL,
    "id" TEXT NOT NULL,
    "observerId" TEXT NOT NULL,
    "windowId" TEXT NOT NULL,
    "vantageId" TEXT,
    "sections" TEXT NOT NULL,
    "party" TEXT NOT NULL,
    "start" TEXT,
    "end" TEXT,
    "scope" TEXT NOT NULL,
    "coverage" REAL NOT NULL,
    "version" INTEGER NOT NULL,
    "replaces" TEXT,
    "reason" TEXT,
    "submittedAt" TEXT NOT NULL,
    "contentHash" TEXT NOT NULL,

    PRIMARY KEY ("countId", "id"),
    CONSTRAINT "tally_countId_observerId_fkey" FOREIGN KEY ("countId", "observerId") REFERENCES "participant" ("countId", "personId") ON DELETE RESTRICT ON UPDATE CASCADE,
    CONSTRAINT "tally_countId_windowId_fkey" FOREIGN KEY ("countId", "windowId") REFERENCES "count_window" ("countId", "id") ON DELETE RESTRICT ON UPDATE CASCADE,
    CHECK (json_array_length("sections") > 0),
    CHECK (json_array_length("party") > 0),
    CHECK (json_type("scope") = 'object'),
    CHECK ("coverage" > 0 AND "coverage" <= 1),
    CHECK ("version" >= 1),
    CHECK (("replaces" IS NULL) = ("version" = 1)),
    CHECK (("replaces" IS NULL) = ("reason" IS NULL))
) STRICT;

CREATE TABLE "tally_line" (
    "countId" TEXT NOT NULL,
    "tallyId" TEXT NOT NULL,
    "position" INTEGER NOT NULL,
    "id" TEXT NOT NULL,
    "written" TEXT NOT NULL,
    "candidates" TEXT NOT NULL,
    "quantity" TEXT NOT NULL,
    "number" INTEGER,
    "low" INTEGER,
    "high" INTEGER,
    "method" TEXT NOT NULL,
    "block" INTEGER,
    "male" INTEGER,
    "female" INTEGER,
    "adult" INTEGER,
    "immature" INTEGER,
    "activity" TEXT NOT NULL,
    "time" TEXT,
    "lon" REAL,
    "lat" REAL,
    "flock" TEXT,
    "heading" REAL,
    "fromId" TEXT,
    "toId" TEXT,
    "certainty" TEXT NOT NULL,
    "note" TEXT,

    PRIMARY KEY ("countId", "tallyId", "position"),
    CONSTRAINT "tally_line_countId_tallyId_fkey" FOREIGN KEY ("countId", "tallyId") REFERENCES "tally" ("countId", "id") ON DELETE RESTRICT ON UPDATE CASCADE,
    CHECK (json_array_length("candidates") > 0),
    CHECK ("quantity" IN ('exact', 'range', 'exact-with-range', 'present')),
    CHECK (("quantity" IN ('exact', 'exact-with-range')) = ("number" IS NOT NULL)),
    CHECK (("quantity" IN ('range', 'exact-with-range')) = ("low" IS NOT NULL AND "high" IS NOT NULL)),
    CHECK ("number" IS NULL OR "number" >= 0),
    CHECK ("low" IS NULL OR ("low" >= 0 AND "low" <= "high")),
    CHECK ("method" IN ('one-by-one', 'block', 'sample', 'guess')),
    CHECK ("activity" IN ('water', 'land', 'flying-through', 'flushed')),
    CHECK ("certainty" IN ('sure', 'likely')),
    CHECK ("male" IS NULL OR "male" >= 0),
    CHECK ("female" IS NULL OR "female" >= 0),
    CHECK ("adult" IS NULL OR "adult" >= 0),
    CHECK ("immature" IS NULL OR "immature" >= 0),
    CHECK ("block" IS NULL OR "block" >= 1),
    CHECK (("lon" IS NULL) = ("lat" IS NULL))
) STRICT;

CREATE TABLE "ruling" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "countId" TEXT NOT NULL,
    "byId" TEXT NOT NULL,
    "at" TEXT NOT NULL,
    "reason" TEXT NOT NULL,
    "target" TEXT NOT NULL,
    "decision" TEXT NOT NULL,
    "basis" TEXT,
    "disagreementId" TEXT,
    "replaces" TEXT,
    "tallies" TEXT NOT NULL,
    "needsSecond" INTEGER NOT NULL,
    "contentHash" TEXT NOT NULL,
    CONSTRAINT "ruling_countId_byId_fkey" FOREIGN KEY ("countId", "byId") REFERENCES "participant" ("countId", "personId") ON DELETE RESTRICT ON UPDATE CASCADE,
    CHECK (length("reason") > 0),
    CHECK (json_type("target") = 'object'),
    CHECK (json_type("decision") = 'object'),
    CHECK ("basis" IS NULL OR json_type("basis") = 'array'),
    CHECK (json_type("tallies") = 'array'),
    CHECK ("needsSecond" IN (0, 1))
) STRICT;

CREATE TABLE "ruling_second" (
    "rulingId" TEXT NOT NULL PRIMARY KEY,
    "byId" TEXT NOT NULL,
    "at" TEXT NOT NULL,
    CONSTRAINT "ruling_second_rulingId_fkey" FOREIGN KEY ("rulingId") REFERENCES "ruling" ("id") ON DELETE RESTRICT ON UPDATE CASCADE
) STRICT;

CREATE TABLE "ruling_withdrawal" (
    "rulingId" TEXT NOT NULL PRIMARY KEY,
    "byId" TEXT NOT NULL,
    "reason" TEXT NOT NULL,
    "at" TEXT NOT NULL,
    CONSTRAINT "ruling_withdrawal_rulingId_fkey" FOREIGN KEY ("rulingId") REFERENCES "ruling" ("id") ON DELETE RESTRICT ON UPDATE CASCADE,
    CHECK (length("reason") > 0)
) STRICT;

CREATE TABLE "observer_query" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "countId" TEXT NOT NULL,
    "disagreementId" TEXT,
    "about" TEXT NOT NULL,
    "aboutForAsked" TEXT NOT NULL,
    "askedById" TEXT NOT NULL,
    "toId" TEXT NOT NULL,
    "question" TEXT NOT NULL,
    "askedAt" TEXT NOT NULL,
    "tallies" TEXT NOT NULL,
    "contentHash" TEXT NOT NULL,
    CONSTRAINT "observer_query_countId_askedById_fkey" FOREIGN KEY ("countId", "askedById") REFERENCES "participant" ("countId", "personId") ON DELETE RESTRICT ON UPDATE CASCADE,
    CONSTRAINT "observer_query_countId_toId_fkey" FOREIGN KEY ("countId", "toId") REFERENCES "participant" ("countId", "personId") ON DELETE RESTRICT ON UPDATE CASCADE,
    CHECK (length("question") > 0),
    CHECK (json_type("tallies") = 'array')
) STRICT;

CREATE TABLE "query_answer" (
    "queryId" TEXT NOT NULL PRIMARY KEY,
    "answer" TEXT NOT NULL,
    "answeredAt" TEXT NOT NULL,
    "contentHash" TEXT NOT NULL,
    CONSTRAINT "query_answer_queryId_fkey" FOREIGN KEY ("queryId") REFERENCES "observer_query" ("id") ON DELETE RESTRICT ON UPDATE CASCADE,
    CHECK (length("answer") > 0)
) STRICT;

CREATE TABLE "sign_off" (
    "countId" TEXT NOT NULL,
    "role" TEXT NOT NULL,
    "inputHash" TEXT NOT NULL,
    "byId" TEXT NOT NULL,
    "at" TEXT NOT NULL,

    PRIMARY KEY ("countId", "role", "inputHash"),
    CONSTRAINT "sign_off_countId_fkey" FOREIGN KEY ("countId") REFERENCES "count" ("id") ON DELETE RESTRICT ON UPDATE CASCADE,
    CHECK ("role" IN ('leader', 'compiler')),
    CHECK (length("inputHash") = 64)
) STRICT;

CREATE TABLE "seal" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "countId" TEXT NOT NULL,
    "byId" TEXT NOT NULL,
    "at" TEXT NOT NULL,
    "inputHash" TEXT NOT NULL,
    "resultHash" TEXT NOT NULL,
    "input" TEXT NOT NULL,
    "result" TEXT NOT NULL,
    "auditRoot" TEXT NOT NULL,
    "auditSize" INTEGER NOT NULL,
    CONSTRAINT "seal_countId_fkey" FOREIGN KEY ("countId") REFERENCES "count" ("id") ON DELETE RESTRICT ON UPDATE CASCADE,
    CHECK (length("inputHash") = 64),
    CHECK (length("resultHash") = 64),
    CHECK (length("auditRoot") = 64),
    CHECK ("auditSize" > 0)
) STRICT;

CREATE TABLE "reconciliation" (
    "inputHash" TEXT NOT NULL,
    "engineHash" TEXT NOT NULL,
    "result" TEXT NOT NULL,
    "madeAt" TEXT NOT NULL,

    PRIMARY KEY ("inputHash", "engineHash")
) STRICT;

CREATE TABLE "audit_entry" (
    "chain" TEXT NOT NULL,
    "seq" INTEGER NOT NULL,
    "at" TEXT NOT NULL,
    "byId" TEXT,
    "act" TEXT NOT NULL,
    "body" TEXT NOT NULL,
    "previous" TEXT NOT NULL,
    "hash" TEXT NOT NULL,

    PRIMARY KEY ("chain", "seq"),
    CHECK ("seq" >= 1),
    CHECK (json_type("body") = 'object'),
    CHECK (length("previous") = 64),
    CHECK (length("hash") = 64)
) STRICT;

CREATE UNIQUE INDEX "person_signInName_key" ON "person"("signInName");

CREATE INDEX "session_personId_idx" ON "session"("personId");

CREATE INDEX "invite_countId_personId_idx" ON "invite"("countId", "personId");

CREATE INDEX "assignment_countId_idx" ON "assignment"("countId");

CREATE UNIQUE INDEX "tally_countId_replaces_key" ON "tally"("countId", "replaces");

CREATE UNIQUE INDEX "tally_line_countId_tallyId_id_key" ON "tally_line"("countId", "tallyId", "id");

CREATE INDEX "ruling_countId_idx" ON "ruling"("countId");

CREATE INDEX "observer_query_countId_idx" ON "observer_query"("countId");

CREATE UNIQUE INDEX "seal_countId_key" ON "seal"("countId");

-- A row of a count's record is never changed or deleted.
CREATE TRIGGER "count_no_update" BEFORE UPDATE ON "count"
BEGIN SELECT RAISE(ABORT, 'append-only: count'); END;
CREATE TRIGGER "count_no_delete" BEFORE DELETE ON "count"
BEGIN SELECT RAISE(ABORT, 'append-only: count'); END;
CREATE TRIGGER "count_window_no_update" BEFORE UPDATE ON "count_window"
BEGIN SELECT RAISE(ABORT, 'append-only: count_window'); END;
CREATE TRIGGER "count_window_no_delete" BEFORE DELETE ON "count_window"
BEGIN SELECT RAISE(ABORT, 'append-only: count_window'); END;
CREATE TRIGGER "window_closing_no_update" BEFORE UPDATE ON "window_closing"
BEGIN SELECT RAISE(ABORT, 'append-only: window_closing'); END;
CREATE TRIGGER "window_closing_no_delete" BEFORE DELETE ON "window_closing"
BEGIN SELECT RAISE(ABORT, 'append-only: window_closing'); END;
CREATE TRIGGER "section_no_update" BEFORE UPDATE ON "section"
BEGIN SELECT RAISE(ABORT, 'append-only: section'); END;
CREATE TRIGGER "section_no_delete" BEFORE DELETE ON "section"
BEGIN SELECT RAISE(ABORT, 'append-only: section'); END;
CREATE TRIGGER "vantage_no_update" BEFORE UPDATE ON "vantage"
BEGIN SELECT RAISE(ABORT, 'append-only: vantage'); END;
CREATE TRIGGER "vantage_no_delete" BEFORE DELETE ON "vantage"
BEGIN SELECT RAISE(ABORT, 'append-only: vantage'); END;
CREATE TRIGGER "view_no_update" BEFORE UPDATE ON "view"
BEGIN SELECT RAISE(ABORT, 'append-only: view'); END;
CREATE TRIGGER "view_no_delete" BEFORE DELETE ON "view"
BEGIN SELECT RAISE(ABORT, 'append-only: view'); END;
CREATE TRIGGER "participant_no_update" BEFORE UPDATE ON "participant"
BEGIN SELECT RAISE(ABORT, 'append-only: participant'); END;
CREATE TRIGGER "participant_no_delete" BEFORE DELETE ON "participant"
BEGIN SELECT RAISE(ABORT, 'append-only: participant'); END;
CREATE TRIGGER "tally_no_update" BEFORE UPDATE ON "tally"
BEGIN SELECT RAISE(ABORT, 'append-only: tally'); END;
CREATE TRIGGER "tally_no_delete" BEFORE DELETE ON "tally"
BEGIN SELECT RAISE(ABORT, 'append-only: tally'); END;
CREATE TRIGGER "tally_line_no_update" BEFORE UPDATE ON "tally_line"
BEGIN SELECT RAISE(ABORT, 'append-only: tally_line'); END;
CREATE TRIGGER "tally_line_no_delete" BEFORE DELETE ON "tally_line"
BEGIN SELECT RAISE(ABORT, 'append-only: tally_line'); END;
CREATE TRIGGER "ruling_no_update" BEFORE UPDATE ON "ruling"
BEGIN SELECT RAISE(ABORT, 'append-only: ruling'); END;
CREATE TRIGGER "ruling_no_delete" BEFORE DELETE ON "ruling"
BEGIN SELECT RAISE(ABORT, 'append-only: ruling'); END;
CREATE TRIGGER "ruling_second_no_update" BEFORE UPDATE ON "ruling_second"
BEGIN SELECT RAISE(ABORT, 'append-only: ruling_second'); END;
CREATE TRIGGER "ruling_second_no_delete" BEFORE DELETE ON "ruling_second"
BEGIN SELECT RAISE(ABORT, 'append-only: ruling_second'); END;
CREATE TRIGGER "ruling_withdrawal_no_update" BEFORE UPDATE ON "ruling_withdrawal"
BEGIN SELECT RAISE(ABORT, 'append-only: ruling_withdrawal'); END;
CREATE TRIGGER "ruling_withdrawal_no_delete" BEFORE DELETE ON "ruling_withdrawal"
BEGIN SELECT RAISE(ABORT, 'append-only: ruling_withdrawal'); END;
CREATE TRIGGER "observer_query_no_update" BEFORE UPDATE ON "observer_query"
BEGIN SELECT RAISE(ABORT, 'append-only: observer_query'); END;
CREATE TRIGGER "observer_query_no_delete" BEFORE DELETE ON "observer_query"
BEGIN SELECT RAISE(ABORT, 'append-only: observer_query'); END;
CREATE TRIGGER "query_answer_no_update" BEFORE UPDATE ON "query_answer"
BEGIN SELECT RAISE(ABORT, 'append-only: query_answer'); END;
CREATE TRIGGER "query_answer_no_delete" BEFORE DELETE ON "query_answer"
BEGIN SELECT RAISE(ABORT, 'append-only: query_answer'); END;
CREATE TRIGGER "sign_off_no_update" BEFORE UPDATE ON "sign_off"
BEGIN SELECT RAISE(ABORT, 'append-only: sign_off'); END;
CREATE TRIGGER "sign_off_no_delete" BEFORE DELETE ON "sign_off"
BEGIN SELECT RAISE(ABORT, 'append-only: sign_off'); END;
CREATE TRIGGER "seal_no_update" BEFORE UPDATE ON "seal"
BEGIN SELECT RAISE(ABORT, 'append-only: seal'); END;
CREATE TRIGGER "seal_no_delete" BEFORE DELETE ON "seal"
BEGIN SELECT RAISE(ABORT, 'append-only: seal'); END;
CREATE TRIGGER "audit_entry_no_update" BEFORE UPDATE ON "audit_entry"
BEGIN SELECT RAISE(ABORT, 'append-only: audit_entry'); END;
CREATE TRIGGER "audit_entry_no_delete" BEFORE DELETE ON "audit_entry"
BEGIN SELECT RAISE(ABORT, 'append-only: audit_entry'); END;

-- A sealed count takes no more rows.
CREATE TRIGGER "window_closing_not_after_seal" BEFORE INSERT ON "window_closing"
WHEN EXISTS (SELECT 1 FROM "seal" WHERE "countId" = NEW."countId")
BEGIN SELECT RAISE(ABORT, 'sealed: window_closing'); END;
CREATE TRIGGER "assignment_not_after_seal" BEFORE INSERT ON "assignment"
WHEN EXISTS (SELECT 1 FROM "seal" WHERE "countId" = NEW."countId")
BEGIN SELECT RAISE(ABORT, 'sealed: assignment'); END;
CREATE TRIGGER "tally_not_after_seal" BEFORE INSERT ON "tally"
WHEN EXISTS (SELECT 1 FROM "seal" WHERE "countId" = NEW."countId")
BEGIN SELECT RAISE(ABORT, 'sealed: tally'); END;
CREATE TRIGGER "ruling_not_after_seal" BEFORE INSERT ON "ruling"
WHEN EXISTS (SELECT 1 FROM "seal" WHERE "countId" = NEW."countId")
BEGIN SELECT RAISE(ABORT, 'sealed: ruling'); END;
CREATE TRIGGER "observer_query_not_after_seal" BEFORE INSERT ON "observer_query"
WHEN EXISTS (SELECT 1 FROM "seal" WHERE "countId" = NEW."countId")
BEGIN SELECT RAISE(ABORT, 'sealed: observer_query'); END;
CREATE TRIGGER "sign_off_not_after_seal" BEFORE INSERT ON "sign_off"
WHEN EXISTS (SELECT 1 FROM "seal" WHERE "countId" = NEW."countId")
BEGIN SELECT RAISE(ABORT, 'sealed: sign_off'); END;
CREATE TRIGGER "assignment_kept_after_seal" BEFORE DELETE ON "assignment"
WHEN EXISTS (SELECT 1 FROM "seal" WHERE "countId" = OLD."countId")
BEGIN SELECT RAISE(ABORT, 'sealed: assignment'); END;
CREATE TRIGGER "ruling_second_not_after_seal" BEFORE INSERT ON "ruling_second"
WHEN EXISTS (SELECT 1 FROM "seal" JOIN "ruling" USING ("countId") WHERE "ruling"."id" = NEW."rulingId")
BEGIN SELECT RAISE(ABORT, 'sealed: ruling_second'); END;
CREATE TRIGGER "ruling_withdrawal_not_after_seal" BEFORE INSERT ON "ruling_withdrawal"
WHEN EXISTS (SELECT 1 FROM "seal" JOIN "ruling" USING ("countId") WHERE "ruling"."id" = NEW."rulingId")
BEGIN SELECT RAISE(ABORT, 'sealed: ruling_withdrawal'); END;
CREATE TRIGGER "query_answer_not_after_seal" BEFORE INSERT ON "query_answer"
WHEN EXISTS (SELECT 1 FROM "seal" JOIN "observer_query" USING ("countId") WHERE "observer_query"."id" = NEW."queryId")
BEGIN SELECT RAISE(ABORT, 'sealed: query_answer'); END;
