CREATE TABLE "drum_settings" (
    "ordinal" INTEGER NOT NULL CONSTRAINT "PK_drum_settings" PRIMARY KEY,
    "fact" TEXT NOT NULL,
    "record" TEXT NOT NULL
);

CREATE TABLE "sizer_counts" (
    "ordinal" INTEGER NOT NULL CONSTRAINT "PK_sizer_counts" PRIMARY KEY,
    "fact" TEXT NOT NULL,
    "record" TEXT NOT NULL
);

CREATE TABLE "sizer_settings" (
    "ordinal" INTEGER NOT NULL CONSTRAINT "PK_sizer_settings" PRIMARY KEY,
    "fact" TEXT NOT NULL,
    "record" TEXT NOT NULL
);

INSERT INTO "__EFMigrationsHistory" ("MigrationId", "ProductVersion")
VALUES ('20261126203000_LineRecords', '10.0.15');

