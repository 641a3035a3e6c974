CREATE TABLE IF NOT EXISTS "__EFMigrationsHistory" (
    "MigrationId" TEXT NOT NULL CONSTRAINT "PK___EFMigrationsHistory" PRIMARY KEY,
    "ProductVersion" TEXT NOT NULL
);

BEGIN TRANSACTION;
CREATE TABLE "Calls" (
    "Run" TEXT NOT NULL,
    "Call" TEXT NOT NULL,
    "Due" INTEGER NOT NULL,
    "ClaimedAt" INTEGER NULL,
    "RungAt" INTEGER NULL,
    CONSTRAINT "PK_Calls" PRIMARY KEY ("Run", "Call")
);

CREATE TABLE "Hosts" (
    "Id" TEXT NOT NULL CONSTRAINT "PK_Hosts" PRIMARY KEY,
    "Name" TEXT NOT NULL,
    "NameKey" TEXT NOT NULL,
    "PasswordHash" TEXT NOT NULL
);

CREATE TABLE "JoinCodes" (
    "Id" TEXT NOT NULL CONSTRAINT "PK_JoinCodes" PRIMARY KEY,
    "Run" TEXT NOT NULL,
    "Hash" TEXT NOT NULL,
    "IsTyped" INTEGER NOT NULL,
    "Role" TEXT NOT NULL,
    "Expires" INTEGER NOT NULL,
    "WrongTries" INTEGER NOT NULL,
    "UsedAt" INTEGER NULL
);

CREATE TABLE "Meals" (
    "Id" TEXT NOT NULL CONSTRAINT "PK_Meals" PRIMARY KEY,
    "Name" TEXT NOT NULL,
    "Document" TEXT NOT NULL,
    "Version" INTEGER NOT NULL,
    "ChangedAt" INTEGER NOT NULL
);

CREATE TABLE "RunEvents" (
    "Run" TEXT NOT NULL,
    "Sequence" INTEGER NOT NULL,
    "Command" TEXT NOT NULL,
    "Part" INTEGER NOT NULL,
    "By" TEXT NULL,
    "At" INTEGER NOT NULL,
    "Kind" TEXT NOT NULL,
    "Document" TEXT NOT NULL,
    CONSTRAINT "PK_RunEvents" PRIMARY KEY ("Run", "Sequence")
);

CREATE TABLE "RunRow" (
    "Id" TEXT NOT NULL CONSTRAINT "PK_RunRow" PRIMARY KEY,
    "Meal" TEXT NOT NULL,
    "Name" TEXT NOT NULL,
    "Began" INTEGER NOT NULL,
    "Ended" INTEGER NULL
);

CREATE TABLE "Sessions" (
    "Id" TEXT NOT NULL CONSTRAINT "PK_Sessions" PRIMARY KEY,
    "Person" TEXT NOT NULL,
    "Run" TEXT NULL,
    "BeganAt" INTEGER NOT NULL,
    "EndedAt" INTEGER NULL
);

CREATE TABLE "Plans" (
    "Id" TEXT NOT NULL CONSTRAINT "PK_Plans" PRIMARY KEY,
    "Meal" TEXT NOT NULL,
    "MealVersion" INTEGER NOT NULL,
    "Document" TEXT NOT NULL,
    "MadeAt" INTEGER NOT NULL,
    CONSTRAINT "FK_Plans_Meals_Meal" FOREIGN KEY ("Meal") REFERENCES "Meals" ("Id") ON DELETE CASCADE
);

CREATE UNIQUE INDEX "IX_Hosts_NameKey" ON "Hosts" ("NameKey");

CREATE UNIQUE INDEX "IX_JoinCodes_Hash" ON "JoinCodes" ("Hash");

CREATE INDEX "IX_Plans_Meal_MadeAt" ON "Plans" ("Meal", "MadeAt");

CREATE UNIQUE INDEX "IX_RunEvents_Run_Command_Part" ON "RunEvents" ("Run", "Command", "Part");

CREATE INDEX "IX_RunRow_Ended" ON "RunRow" ("Ended");

CREATE INDEX "IX_Sessions_Person" ON "Sessions" ("Person");

INSERT INTO "__EFMigrationsHistory" ("MigrationId", "ProductVersion")
VALUES ('20261125075729_Initial', '10.0.15');

COMMIT;

BEGIN TRANSACTION;
CREATE TABLE "Deliveries" (
    "Run" TEXT NOT NULL,
    "Call" TEXT NOT NULL,
    "Way" TEXT NOT NULL,
    "Text" TEXT NOT NULL,
    "Priority" TEXT NOT NULL,
    "Due" INTEGER NOT NULL,
    "NextAt" INTEGER NOT NULL,
    "Tries" INTEGER NOT NULL,
    "DoneAt" INTEGER NULL,
    "Failure" TEXT NULL,
    CONSTRAINT "PK_Deliveries" PRIMARY KEY ("Run", "Call", "Way")
);

CREATE TABLE "HouseKeys" (
    "Name" TEXT NOT NULL CONSTRAINT "PK_HouseKeys" PRIMARY KEY,
    "Value" TEXT NOT NULL
);

CREATE TABLE "PushSubscriptions" (
    "Id" TEXT NOT NULL CONSTRAINT "PK_PushSubscriptions" PRIMARY KEY,
    "Run" TEXT NOT NULL,
    "Person" TEXT NOT NULL,
    "Endpoint" TEXT NOT NULL,
    "P256dh" TEXT NOT NULL,
    "Auth" TEXT NOT NULL
);

CREATE INDEX "IX_Deliveries_DoneAt_NextAt" ON "Deliveries" ("DoneAt", "NextAt");

CREATE UNIQUE INDEX "IX_PushSubscriptions_Run_Endpoint" ON "PushSubscriptions" ("Run", "Endpoint");

INSERT INTO "__EFMigrationsHistory" ("MigrationId", "ProductVersion")
VALUES ('20261128025800_CallsBeyondThePage', '10.0.15');

COMMIT;

BEGIN TRANSACTION;
ALTER TABLE "RunRow" ADD "Rate" INTEGER NULL;

ALTER TABLE "RunRow" ADD "Shows" INTEGER NULL;

INSERT INTO "__EFMigrationsHistory" ("MigrationId", "ProductVersion")
VALUES ('20261128033257_Rehearsals', '10.0.15');

COMMIT;

BEGIN TRANSACTION;
CREATE TABLE "Dishes" (
    "Id" TEXT NOT NULL CONSTRAINT "PK_Dishes" PRIMARY KEY,
    "Name" TEXT NOT NULL,
    "Number" INTEGER NOT NULL,
    "Revision" INTEGER NOT NULL,
    "ChangedAt" INTEGER NOT NULL,
    "DeletedAt" INTEGER NULL
);

CREATE TABLE "DishVersions" (
    "Dish" TEXT NOT NULL,
    "Number" INTEGER NOT NULL,
    "Document" TEXT NOT NULL,
    "ChangedAt" INTEGER NOT NULL,
    CONSTRAINT "PK_DishVersions" PRIMARY KEY ("Dish", "Number"),
    CONSTRAINT "FK_DishVersions_Dishes_Dish" FOREIGN KEY ("Dish") REFERENCES "Dishes" ("Id") ON DELETE CASCADE
);

INSERT INTO "__EFMigrationsHistory" ("MigrationId", "ProductVersion")
VALUES ('20261128055030_Dishes', '10.0.15');

COMMIT;

BEGIN TRANSACTION;
CREATE TABLE "ShoppingTaps" (
    "Meal" TEXT NOT NULL,
    "Sequence" INTEGER NOT NULL,
    "Command" TEXT NOT NULL,
    "By" TEXT NOT NULL,
    "At" INTEGER NOT NULL,
    "IsOfHousehold" INTEGER NOT NULL,
    "Document" TEXT NOT NULL,
    CONSTRAINT "PK_ShoppingTaps" PRIMARY KEY ("Meal", "Sequence")
);

CREATE INDEX "IX_ShoppingTaps_IsOfHousehold" ON "ShoppingTaps" ("IsOfHousehold");

CREATE UNIQUE INDEX "IX_ShoppingTaps_Meal_Command" ON "ShoppingTaps" ("Meal", "Command");

INSERT INTO "__EFMigrationsHistory" ("MigrationId", "ProductVersion")
VALUES ('20261128055814_Shopping', '10.0.15');

COMMIT;

BEGIN TRANSACTION;
CREATE TABLE "Leftovers" (
    "Meal" TEXT NOT NULL,
    "Dish" TEXT NOT NULL,
    "Portions" INTEGER NOT NULL,
    "Kinds" TEXT NULL,
    "OffTheHeatAt" INTEGER NULL,
    CONSTRAINT "PK_Leftovers" PRIMARY KEY ("Meal", "Dish"),
    CONSTRAINT "FK_Leftovers_Meals_Meal" FOREIGN KEY ("Meal") REFERENCES "Meals" ("Id") ON DELETE CASCADE
);

CREATE TABLE "Settings" (
    "Id" INTEGER NOT NULL CONSTRAINT "PK_Settings" PRIMARY KEY,
    "FoodRegion" TEXT NULL
);

INSERT INTO "__EFMigrationsHistory" ("MigrationId", "ProductVersion")
VALUES ('20261128063816_SettingsAndLeftovers', '10.0.15');

COMMIT;

BEGIN TRANSACTION;
CREATE TABLE "DebriefNotes" (
    "Run" TEXT NOT NULL,
    "Dish" TEXT NOT NULL,
    "Verdict" TEXT NOT NULL,
    "Note" TEXT NOT NULL,
    "ChangedAt" INTEGER NOT NULL,
    CONSTRAINT "PK_DebriefNotes" PRIMARY KEY ("Run", "Dish")
);

CREATE TABLE "LearnedTimes" (
    "Dish" TEXT NOT NULL,
    "Text" TEXT NOT NULL,
    "DishName" TEXT NOT NULL,
    "Least" REAL NOT NULL,
    "Likely" REAL NOT NULL,
    "Most" REAL NOT NULL,
    "Meals" INTEGER NOT NULL,
    "AcceptedAt" INTEGER NOT NULL,
    CONSTRAINT "PK_LearnedTimes" PRIMARY KEY ("Dish", "Text")
);

CREATE TABLE "WrittenTimes" (
    "Run" TEXT NOT NULL,
    "Step" TEXT NOT NULL,
    "Option" INTEGER NOT NULL,
    "Least" INTEGER NOT NULL,
    "Likely" INTEGER NOT NULL,
    "Most" INTEGER NOT NULL,
    CONSTRAINT "PK_WrittenTimes" PRIMARY KEY ("Run", "Step", "Option")
);

INSERT INTO "__EFMigrationsHistory" ("MigrationId", "ProductVersion")
VALUES ('20261128065025_Debriefs', '10.0.15');

COMMIT;

BEGIN TRANSACTION;
CREATE TABLE "Again" (
    "Meal" TEXT NOT NULL CONSTRAINT "PK_Again" PRIMARY KEY,
    "Run" TEXT NOT NULL,
    CONSTRAINT "FK_Again_Meals_Meal" FOREIGN KEY ("Meal") REFERENCES "Meals" ("Id") ON DELETE CASCADE
);

INSERT INTO "__EFMigrationsHistory" ("MigrationId", "ProductVersion")
VALUES ('20261128070434_Again', '10.0.15');

COMMIT;

BEGIN TRANSACTION;
CREATE TABLE "ForgottenRuns" (
    "Run" TEXT NOT NULL CONSTRAINT "PK_ForgottenRuns" PRIMARY KEY
);

INSERT INTO "__EFMigrationsHistory" ("MigrationId", "ProductVersion")
VALUES ('20261128071100_ForgottenRuns', '10.0.15');

COMMIT;

BEGIN TRANSACTION;
DELETE FROM ShoppingTaps WHERE IsOfHousehold = 1;

DROP INDEX "IX_ShoppingTaps_IsOfHousehold";

ALTER TABLE "ShoppingTaps" ADD "Setting" TEXT NULL;

CREATE INDEX "IX_ShoppingTaps_Setting_At" ON "ShoppingTaps" ("Setting", "At");

CREATE TABLE "ef_temp_ShoppingTaps" (
    "Meal" TEXT NOT NULL,
    "Sequence" INTEGER NOT NULL,
    "At" INTEGER NOT NULL,
    "By" TEXT NOT NULL,
    "Command" TEXT NOT NULL,
    "Document" TEXT NOT NULL,
    "Setting" TEXT NULL,
    CONSTRAINT "PK_ShoppingTaps" PRIMARY KEY ("Meal", "Sequence")
);

INSERT INTO "ef_temp_ShoppingTaps" ("Meal", "Sequence", "At", "By", "Command", "Document", "Setting")
SELECT "Meal", "Sequence", "At", "By", "Command", "Document", "Setting"
FROM "ShoppingTaps";

COMMIT;

PRAGMA foreign_keys = 0;

BEGIN TRANSACTION;
DROP TABLE "ShoppingTaps";

ALTER TABLE "ef_temp_ShoppingTaps" RENAME TO "ShoppingTaps";

COMMIT;

PRAGMA foreign_keys = 1;

BEGIN TRANSACTION;
CREATE UNIQUE INDEX "IX_ShoppingTaps_Meal_Command" ON "ShoppingTaps" ("Meal", "Command");

CREATE INDEX "IX_ShoppingTaps_Setting_At" ON "ShoppingTaps" ("Setting", "At");

COMMIT;

INSERT INTO "__EFMigrationsHistory" ("MigrationId", "ProductVersion")
VALUES ('20261128091615_ShoppingSettings', '10.0.15');

BEGIN TRANSACTION;
ALTER TABLE "Settings" ADD "Spoons" TEXT NULL;

INSERT INTO "__EFMigrationsHistory" ("MigrationId", "ProductVersion")
VALUES ('20261128093939_Spoons', '10.0.15');

COMMIT;

BEGIN TRANSACTION;
ALTER TABLE "Sessions" ADD "Address" TEXT NULL;

ALTER TABLE "Sessions" ADD "Device" TEXT NULL;

ALTER TABLE "Sessions" ADD "LastSeenAt" INTEGER NULL;

CREATE TABLE "Audit" (
    "Id" INTEGER NOT NULL CONSTRAINT "PK_Audit" PRIMARY KEY AUTOINCREMENT,
    "At" INTEGER NOT NULL,
    "Deed" TEXT NOT NULL,
    "Who" TEXT NULL,
    "Address" TEXT NULL,
    "About" TEXT NULL
);

CREATE TABLE "HostInvitations" (
    "Id" TEXT NOT NULL CONSTRAINT "PK_HostInvitations" PRIMARY KEY,
    "Hash" TEXT NOT NULL,
    "By" TEXT NOT NULL,
    "Expires" INTEGER NOT NULL,
    CONSTRAINT "FK_HostInvitations_Hosts_By" FOREIGN KEY ("By") REFERENCES "Hosts" ("Id") ON DELETE CASCADE
);

CREATE TABLE "PasskeyChallenges" (
    "Challenge" TEXT NOT NULL CONSTRAINT "PK_PasskeyChallenges" PRIMARY KEY,
    "Session" TEXT NULL,
    "Options" TEXT NOT NULL,
    "Expires" INTEGER NOT NULL
);

CREATE TABLE "Passkeys" (
    "Id" TEXT NOT NULL CONSTRAINT "PK_Passkeys" PRIMARY KEY,
    "Host" TEXT NOT NULL,
    "Credential" BLOB NOT NULL,
    "PublicKey" BLOB NOT NULL,
    "Place" TEXT NOT NULL,
    "Name" TEXT NOT NULL,
    "SignCount" INTEGER NOT NULL,
    "AddedAt" INTEGER NOT NULL,
    "LastUsedAt" INTEGER NULL,
    CONSTRAINT "FK_Passkeys_Hosts_Host" FOREIGN KEY ("Host") REFERENCES "Hosts" ("Id") ON DELETE CASCADE
);

CREATE INDEX "IX_Audit_At" ON "Audit" ("At");

CREATE INDEX "IX_HostInvitations_By" ON "HostInvitations" ("By");

CREATE UNIQUE INDEX "IX_HostInvitations_Hash" ON "HostInvitations" ("Hash");

CREATE INDEX "IX_PasskeyChallenges_Expires" ON "PasskeyChallenges" ("Expires");

CREATE UNIQUE INDEX "IX_Passkeys_Credential" ON "Passkeys" ("Credential");

CREATE INDEX "IX_Passkeys_Host" ON "Passkeys" ("Host");

INSERT INTO "__EFMigrationsHistory" ("MigrationId", "ProductVersion")
VALUES ('20261128125116_AccountsAndAudit', '10.0.15');

COMMIT;

BEGIN TRANSACTION;
CREATE TABLE "ApiTokens" (
    "Id" TEXT NOT NULL CONSTRAINT "PK_ApiTokens" PRIMARY KEY,
    "Hash" TEXT NOT NULL,
    "Host" TEXT NOT NULL,
    "Name" TEXT NOT NULL,
    "Scopes" TEXT NOT NULL,
    "MadeAt" INTEGER NOT NULL,
    "LastUsedAt" INTEGER NULL,
    CONSTRAINT "FK_ApiTokens_Hosts_Host" FOREIGN KEY ("Host") REFERENCES "Hosts" ("Id") ON DELETE CASCADE
);

CREATE UNIQUE INDEX "IX_ApiTokens_Hash" ON "ApiTokens" ("Hash");

CREATE INDEX "IX_ApiTokens_Host" ON "ApiTokens" ("Host");

INSERT INTO "__EFMigrationsHistory" ("MigrationId", "ProductVersion")
VALUES ('20261128140037_ApiTokens', '10.0.15');

COMMIT;

BEGIN TRANSACTION;
CREATE TABLE "AgainTicks" (
    "Meal" TEXT NOT NULL,
    "Item" TEXT NOT NULL,
    CONSTRAINT "PK_AgainTicks" PRIMARY KEY ("Meal", "Item"),
    CONSTRAINT "FK_AgainTicks_Meals_Meal" FOREIGN KEY ("Meal") REFERENCES "Meals" ("Id") ON DELETE CASCADE
);

CREATE TABLE "DebriefPhotos" (
    "Id" TEXT NOT NULL CONSTRAINT "PK_DebriefPhotos" PRIMARY KEY,
    "Run" TEXT NOT NULL,
    "Dish" TEXT NOT NULL,
    "Kind" TEXT NOT NULL,
    "Image" BLOB NOT NULL,
    "AddedAt" INTEGER NOT NULL
);

CREATE TABLE "OvenFigures" (
    "Oven" TEXT NOT NULL CONSTRAINT "PK_OvenFigures" PRIMARY KEY,
    "HeatUpPerMinute" REAL NULL,
    "CoolDownPerMinute" REAL NULL,
    "ReadsHighBy" INTEGER NULL,
    "AcceptedAt" INTEGER NOT NULL
);

CREATE TABLE "OvenTrials" (
    "Id" TEXT NOT NULL CONSTRAINT "PK_OvenTrials" PRIMARY KEY,
    "Oven" TEXT NOT NULL,
    "Dial" INTEGER NOT NULL,
    "Began" INTEGER NOT NULL,
    "DoorShut" INTEGER NULL,
    "Off" INTEGER NULL,
    "Ended" INTEGER NULL,
    "Document" TEXT NOT NULL
);

CREATE INDEX "IX_DebriefPhotos_Run" ON "DebriefPhotos" ("Run");

INSERT INTO "__EFMigrationsHistory" ("MigrationId", "ProductVersion")
VALUES ('20261128143125_OvensAndPictures', '10.0.15');

COMMIT;

