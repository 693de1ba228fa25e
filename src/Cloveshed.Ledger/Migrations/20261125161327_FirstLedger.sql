CREATE TABLE IF NOT EXISTS "__EFMigrationsHistory" (
    "MigrationId" TEXT NOT NULL CONSTRAINT "PK___EFMigrationsHistory" PRIMARY KEY,
    "ProductVersion" TEXT NOT NULL
);

CREATE TABLE "documents" (
    "sha256" TEXT NOT NULL CONSTRAINT "PK_documents" PRIMARY KEY,
    "bytes" BLOB NOT NULL
);

CREATE TABLE "facts" (
    "seq" INTEGER NOT NULL CONSTRAINT "PK_facts" PRIMARY KEY,
    "id" TEXT NOT NULL,
    "kind" TEXT NOT NULL,
    "happened_at" TEXT NOT NULL,
    "recorded_at" TEXT NOT NULL,
    "said_by" TEXT NOT NULL,
    "device" TEXT NOT NULL,
    "place" TEXT NOT NULL,
    "body" TEXT NOT NULL,
    "corrects" TEXT NULL,
    "batch" TEXT NOT NULL,
    "prev" TEXT NOT NULL,
    "hash" TEXT NOT NULL
);

CREATE TABLE "holds" (
    "ordinal" INTEGER NOT NULL CONSTRAINT "PK_holds" PRIMARY KEY,
    "fact" TEXT NOT NULL,
    "record" TEXT NOT NULL
);

CREATE TABLE "ledger_head" (
    "one" INTEGER NOT NULL CONSTRAINT "PK_ledger_head" PRIMARY KEY,
    "seq" INTEGER NOT NULL,
    "hash" TEXT NOT NULL
);

CREATE TABLE "plan_ends" (
    "ordinal" INTEGER NOT NULL CONSTRAINT "PK_plan_ends" PRIMARY KEY,
    "fact" TEXT NOT NULL,
    "record" TEXT NOT NULL
);

CREATE TABLE "plan_jobs" (
    "ordinal" INTEGER NOT NULL CONSTRAINT "PK_plan_jobs" PRIMARY KEY,
    "fact" TEXT NOT NULL,
    "record" TEXT NOT NULL
);

CREATE TABLE "plans" (
    "ordinal" INTEGER NOT NULL CONSTRAINT "PK_plans" PRIMARY KEY,
    "fact" TEXT NOT NULL,
    "record" TEXT NOT NULL
);

CREATE TABLE "season_files" (
    "file" TEXT NOT NULL CONSTRAINT "PK_season_files" PRIMARY KEY,
    "columns" TEXT NOT NULL
);

CREATE TABLE "season_rows" (
    "file" TEXT NOT NULL,
    "row" INTEGER NOT NULL,
    "cells" TEXT NULL,
    "fact" TEXT NULL,
    "seq" INTEGER NOT NULL,
    CONSTRAINT "PK_season_rows" PRIMARY KEY ("file", "row")
);

CREATE TABLE "seasons" (
    "opened" TEXT NOT NULL CONSTRAINT "PK_seasons" PRIMARY KEY,
    "settings" TEXT NOT NULL
);

CREATE UNIQUE INDEX "facts_id" ON "facts" ("id");

CREATE INDEX "facts_kind" ON "facts" ("kind");

INSERT INTO "__EFMigrationsHistory" ("MigrationId", "ProductVersion")
VALUES ('20261125161327_FirstLedger', '10.0.15');

