using System;
using Microsoft.EntityFrameworkCore.Migrations;
using Npgsql.EntityFrameworkCore.PostgreSQL.Metadata;

#nullable disable

namespace CookAlong.Web.Data.Postgres.Migrations
{
    /// <inheritdoc />
    public partial class Initial : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.CreateTable(
                name: "Audit",
                columns: table => new
                {
                    Id = table.Column<long>(type: "bigint", nullable: false)
                        .Annotation("Npgsql:ValueGenerationStrategy", NpgsqlValueGenerationStrategy.IdentityByDefaultColumn),
                    At = table.Column<long>(type: "bigint", nullable: false),
                    Deed = table.Column<string>(type: "text", nullable: false),
                    Who = table.Column<string>(type: "text", nullable: true, collation: "C"),
                    Address = table.Column<string>(type: "text", nullable: true, collation: "C"),
                    About = table.Column<string>(type: "text", nullable: true, collation: "C")
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_Audit", x => x.Id);
                });

            migrationBuilder.CreateTable(
                name: "Calls",
                columns: table => new
                {
                    Run = table.Column<Guid>(type: "uuid", nullable: false),
                    Call = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    Due = table.Column<long>(type: "bigint", nullable: false),
                    ClaimedAt = table.Column<long>(type: "bigint", nullable: true),
                    RungAt = table.Column<long>(type: "bigint", nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_Calls", x => new { x.Run, x.Call });
                });

            migrationBuilder.CreateTable(
                name: "DebriefNotes",
                columns: table => new
                {
                    Run = table.Column<Guid>(type: "uuid", nullable: false),
                    Dish = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    Verdict = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    Note = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    ChangedAt = table.Column<long>(type: "bigint", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_DebriefNotes", x => new { x.Run, x.Dish });
                });

            migrationBuilder.CreateTable(
                name: "DebriefPhotos",
                columns: table => new
                {
                    Id = table.Column<Guid>(type: "uuid", nullable: false),
                    Run = table.Column<Guid>(type: "uuid", nullable: false),
                    Dish = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    Kind = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    Image = table.Column<byte[]>(type: "bytea", nullable: false),
                    AddedAt = table.Column<long>(type: "bigint", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_DebriefPhotos", x => x.Id);
                });

            migrationBuilder.CreateTable(
                name: "Deliveries",
                columns: table => new
                {
                    Run = table.Column<Guid>(type: "uuid", nullable: false),
                    Call = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    Way = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    Text = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    Priority = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    Due = table.Column<long>(type: "bigint", nullable: false),
                    NextAt = table.Column<long>(type: "bigint", nullable: false),
                    Tries = table.Column<int>(type: "integer", nullable: false),
                    DoneAt = table.Column<long>(type: "bigint", nullable: true),
                    Failure = table.Column<string>(type: "text", nullable: true, collation: "C")
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_Deliveries", x => new { x.Run, x.Call, x.Way });
                });

            migrationBuilder.CreateTable(
                name: "Dishes",
                columns: table => new
                {
                    Id = table.Column<Guid>(type: "uuid", nullable: false),
                    Name = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    Number = table.Column<int>(type: "integer", nullable: false),
                    Revision = table.Column<int>(type: "integer", nullable: false),
                    ChangedAt = table.Column<long>(type: "bigint", nullable: false),
                    DeletedAt = table.Column<long>(type: "bigint", nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_Dishes", x => x.Id);
                });

            migrationBuilder.CreateTable(
                name: "ForgottenRuns",
                columns: table => new
                {
                    Run = table.Column<Guid>(type: "uuid", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_ForgottenRuns", x => x.Run);
                });

            migrationBuilder.CreateTable(
                name: "Hosts",
                columns: table => new
                {
                    Id = table.Column<Guid>(type: "uuid", nullable: false),
                    Name = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    NameKey = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    PasswordHash = table.Column<string>(type: "text", nullable: false, collation: "C")
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_Hosts", x => x.Id);
                });

            migrationBuilder.CreateTable(
                name: "HouseKeys",
                columns: table => new
                {
                    Name = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    Value = table.Column<string>(type: "text", nullable: false, collation: "C")
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_HouseKeys", x => x.Name);
                });

            migrationBuilder.CreateTable(
                name: "JoinCodes",
                columns: table => new
                {
                    Id = table.Column<Guid>(type: "uuid", nullable: false),
                    Run = table.Column<Guid>(type: "uuid", nullable: false),
                    Hash = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    IsTyped = table.Column<bool>(type: "boolean", nullable: false),
                    Role = table.Column<string>(type: "text", nullable: false),
                    Expires = table.Column<long>(type: "bigint", nullable: false),
                    WrongTries = table.Column<int>(type: "integer", nullable: false),
                    UsedAt = table.Column<long>(type: "bigint", nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_JoinCodes", x => x.Id);
                });

            migrationBuilder.CreateTable(
                name: "LearnedTimes",
                columns: table => new
                {
                    Dish = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    Text = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    DishName = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    Least = table.Column<double>(type: "double precision", nullable: false),
                    Likely = table.Column<double>(type: "double precision", nullable: false),
                    Most = table.Column<double>(type: "double precision", nullable: false),
                    Meals = table.Column<int>(type: "integer", nullable: false),
                    AcceptedAt = table.Column<long>(type: "bigint", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_LearnedTimes", x => new { x.Dish, x.Text });
                });

            migrationBuilder.CreateTable(
                name: "Meals",
                columns: table => new
                {
                    Id = table.Column<Guid>(type: "uuid", nullable: false),
                    Name = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    Document = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    Version = table.Column<int>(type: "integer", nullable: false),
                    ChangedAt = table.Column<long>(type: "bigint", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_Meals", x => x.Id);
                });

            migrationBuilder.CreateTable(
                name: "OvenFigures",
                columns: table => new
                {
                    Oven = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    HeatUpPerMinute = table.Column<double>(type: "double precision", nullable: true),
                    CoolDownPerMinute = table.Column<double>(type: "double precision", nullable: true),
                    ReadsHighBy = table.Column<int>(type: "integer", nullable: true),
                    AcceptedAt = table.Column<long>(type: "bigint", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_OvenFigures", x => x.Oven);
                });

            migrationBuilder.CreateTable(
                name: "OvenTrials",
                columns: table => new
                {
                    Id = table.Column<Guid>(type: "uuid", nullable: false),
                    Oven = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    Dial = table.Column<int>(type: "integer", nullable: false),
                    Began = table.Column<long>(type: "bigint", nullable: false),
                    DoorShut = table.Column<long>(type: "bigint", nullable: true),
                    Off = table.Column<long>(type: "bigint", nullable: true),
                    Ended = table.Column<long>(type: "bigint", nullable: true),
                    Document = table.Column<string>(type: "text", nullable: false, collation: "C")
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_OvenTrials", x => x.Id);
                });

            migrationBuilder.CreateTable(
                name: "PasskeyChallenges",
                columns: table => new
                {
                    Challenge = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    Session = table.Column<Guid>(type: "uuid", nullable: true),
                    Options = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    Expires = table.Column<long>(type: "bigint", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_PasskeyChallenges", x => x.Challenge);
                });

            migrationBuilder.CreateTable(
                name: "PushSubscriptions",
                columns: table => new
                {
                    Id = table.Column<Guid>(type: "uuid", nullable: false),
                    Run = table.Column<Guid>(type: "uuid", nullable: false),
                    Person = table.Column<Guid>(type: "uuid", nullable: false),
                    Endpoint = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    P256dh = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    Auth = table.Column<string>(type: "text", nullable: false, collation: "C")
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_PushSubscriptions", x => x.Id);
                });

            migrationBuilder.CreateTable(
                name: "RunEvents",
                columns: table => new
                {
                    Run = table.Column<Guid>(type: "uuid", nullable: false),
                    Sequence = table.Column<long>(type: "bigint", nullable: false),
                    Command = table.Column<Guid>(type: "uuid", nullable: false),
                    Part = table.Column<int>(type: "integer", nullable: false),
                    By = table.Column<Guid>(type: "uuid", nullable: true),
                    At = table.Column<long>(type: "bigint", nullable: false),
                    Kind = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    Document = table.Column<string>(type: "text", nullable: false, collation: "C")
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_RunEvents", x => new { x.Run, x.Sequence });
                });

            migrationBuilder.CreateTable(
                name: "RunRow",
                columns: table => new
                {
                    Id = table.Column<Guid>(type: "uuid", nullable: false),
                    Meal = table.Column<Guid>(type: "uuid", nullable: false),
                    Name = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    Began = table.Column<long>(type: "bigint", nullable: false),
                    Ended = table.Column<long>(type: "bigint", nullable: true),
                    Rate = table.Column<int>(type: "integer", nullable: true),
                    Shows = table.Column<long>(type: "bigint", nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_RunRow", x => x.Id);
                });

            migrationBuilder.CreateTable(
                name: "Sessions",
                columns: table => new
                {
                    Id = table.Column<Guid>(type: "uuid", nullable: false),
                    Person = table.Column<Guid>(type: "uuid", nullable: false),
                    Run = table.Column<Guid>(type: "uuid", nullable: true),
                    BeganAt = table.Column<long>(type: "bigint", nullable: false),
                    EndedAt = table.Column<long>(type: "bigint", nullable: true),
                    Device = table.Column<string>(type: "text", nullable: true, collation: "C"),
                    Address = table.Column<string>(type: "text", nullable: true, collation: "C"),
                    LastSeenAt = table.Column<long>(type: "bigint", nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_Sessions", x => x.Id);
                });

            migrationBuilder.CreateTable(
                name: "Settings",
                columns: table => new
                {
                    Id = table.Column<int>(type: "integer", nullable: false),
                    FoodRegion = table.Column<string>(type: "text", nullable: true),
                    Spoons = table.Column<string>(type: "text", nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_Settings", x => x.Id);
                });

            migrationBuilder.CreateTable(
                name: "ShoppingTaps",
                columns: table => new
                {
                    Meal = table.Column<Guid>(type: "uuid", nullable: false),
                    Sequence = table.Column<long>(type: "bigint", nullable: false),
                    Command = table.Column<Guid>(type: "uuid", nullable: false),
                    By = table.Column<Guid>(type: "uuid", nullable: false),
                    At = table.Column<long>(type: "bigint", nullable: false),
                    Setting = table.Column<string>(type: "text", nullable: true, collation: "C"),
                    Document = table.Column<string>(type: "text", nullable: false, collation: "C")
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_ShoppingTaps", x => new { x.Meal, x.Sequence });
                });

            migrationBuilder.CreateTable(
                name: "WrittenTimes",
                columns: table => new
                {
                    Run = table.Column<Guid>(type: "uuid", nullable: false),
                    Step = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    Option = table.Column<int>(type: "integer", nullable: false),
                    Least = table.Column<int>(type: "integer", nullable: false),
                    Likely = table.Column<int>(type: "integer", nullable: false),
                    Most = table.Column<int>(type: "integer", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_WrittenTimes", x => new { x.Run, x.Step, x.Option });
                });

            migrationBuilder.CreateTable(
                name: "DishVersions",
                columns: table => new
                {
                    Dish = table.Column<Guid>(type: "uuid", nullable: false),
                    Number = table.Column<int>(type: "integer", nullable: false),
                    Document = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    ChangedAt = table.Column<long>(type: "bigint", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_DishVersions", x => new { x.Dish, x.Number });
                    table.ForeignKey(
                        name: "FK_DishVersions_Dishes_Dish",
                        column: x => x.Dish,
                        principalTable: "Dishes",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.CreateTable(
                name: "ApiTokens",
                columns: table => new
                {
                    Id = table.Column<Guid>(type: "uuid", nullable: false),
                    Hash = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    Host = table.Column<Guid>(type: "uuid", nullable: false),
                    Name = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    Scopes = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    MadeAt = table.Column<long>(type: "bigint", nullable: false),
                    LastUsedAt = table.Column<long>(type: "bigint", nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_ApiTokens", x => x.Id);
                    table.ForeignKey(
                        name: "FK_ApiTokens_Hosts_Host",
                        column: x => x.Host,
                        principalTable: "Hosts",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.CreateTable(
                name: "HostInvitations",
                columns: table => new
                {
                    Id = table.Column<Guid>(type: "uuid", nullable: false),
                    Hash = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    By = table.Column<Guid>(type: "uuid", nullable: false),
                    Expires = table.Column<long>(type: "bigint", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_HostInvitations", x => x.Id);
                    table.ForeignKey(
                        name: "FK_HostInvitations_Hosts_By",
                        column: x => x.By,
                        principalTable: "Hosts",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.CreateTable(
                name: "Passkeys",
                columns: table => new
                {
                    Id = table.Column<Guid>(type: "uuid", nullable: false),
                    Host = table.Column<Guid>(type: "uuid", nullable: false),
                    Credential = table.Column<byte[]>(type: "bytea", nullable: false),
                    PublicKey = table.Column<byte[]>(type: "bytea", nullable: false),
                    Place = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    Name = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    SignCount = table.Column<long>(type: "bigint", nullable: false),
                    AddedAt = table.Column<long>(type: "bigint", nullable: false),
                    LastUsedAt = table.Column<long>(type: "bigint", nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_Passkeys", x => x.Id);
                    table.ForeignKey(
                        name: "FK_Passkeys_Hosts_Host",
                        column: x => x.Host,
                        principalTable: "Hosts",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.CreateTable(
                name: "Again",
                columns: table => new
                {
                    Meal = table.Column<Guid>(type: "uuid", nullable: false),
                    Run = table.Column<Guid>(type: "uuid", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_Again", x => x.Meal);
                    table.ForeignKey(
                        name: "FK_Again_Meals_Meal",
                        column: x => x.Meal,
                        principalTable: "Meals",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.CreateTable(
                name: "AgainTicks",
                columns: table => new
                {
                    Meal = table.Column<Guid>(type: "uuid", nullable: false),
                    Item = table.Column<string>(type: "text", nullable: false, collation: "C")
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_AgainTicks", x => new { x.Meal, x.Item });
                    table.ForeignKey(
                        name: "FK_AgainTicks_Meals_Meal",
                        column: x => x.Meal,
                        principalTable: "Meals",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.CreateTable(
                name: "Leftovers",
                columns: table => new
                {
                    Meal = table.Column<Guid>(type: "uuid", nullable: false),
                    Dish = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    Portions = table.Column<int>(type: "integer", nullable: false),
                    Kinds = table.Column<string>(type: "text", nullable: true, collation: "C"),
                    OffTheHeatAt = table.Column<long>(type: "bigint", nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_Leftovers", x => new { x.Meal, x.Dish });
                    table.ForeignKey(
                        name: "FK_Leftovers_Meals_Meal",
                        column: x => x.Meal,
                        principalTable: "Meals",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.CreateTable(
                name: "Plans",
                columns: table => new
                {
                    Id = table.Column<Guid>(type: "uuid", nullable: false),
                    Meal = table.Column<Guid>(type: "uuid", nullable: false),
                    MealVersion = table.Column<int>(type: "integer", nullable: false),
                    Document = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    MadeAt = table.Column<long>(type: "bigint", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_Plans", x => x.Id);
                    table.ForeignKey(
                        name: "FK_Plans_Meals_Meal",
                        column: x => x.Meal,
                        principalTable: "Meals",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.CreateIndex(
                name: "IX_ApiTokens_Hash",
                table: "ApiTokens",
                column: "Hash",
                unique: true);

            migrationBuilder.CreateIndex(
                name: "IX_ApiTokens_Host",
                table: "ApiTokens",
                column: "Host");

            migrationBuilder.CreateIndex(
                name: "IX_Audit_At",
                table: "Audit",
                column: "At");

            migrationBuilder.CreateIndex(
                name: "IX_DebriefPhotos_Run",
                table: "DebriefPhotos",
                column: "Run");

            migrationBuilder.CreateIndex(
                name: "IX_Deliveries_DoneAt_NextAt",
                table: "Deliveries",
                columns: new[] { "DoneAt", "NextAt" });

            migrationBuilder.CreateIndex(
                name: "IX_HostInvitations_By",
                table: "HostInvitations",
                column: "By");

            migrationBuilder.CreateIndex(
                name: "IX_HostInvitations_Hash",
                table: "HostInvitations",
                column: "Hash",
                unique: true);

            migrationBuilder.CreateIndex(
                name: "IX_Hosts_NameKey",
                table: "Hosts",
                column: "NameKey",
                unique: true);

            migrationBuilder.CreateIndex(
                name: "IX_JoinCodes_Hash",
                table: "JoinCodes",
                column: "Hash",
                unique: true);

            migrationBuilder.CreateIndex(
                name: "IX_PasskeyChallenges_Expires",
                table: "PasskeyChallenges",
                column: "Expires");

            migrationBuilder.CreateIndex(
                name: "IX_Passkeys_Credential",
                table: "Passkeys",
                column: "Credential",
                unique: true);

            migrationBuilder.CreateIndex(
                name: "IX_Passkeys_Host",
                table: "Passkeys",
                column: "Host");

            migrationBuilder.CreateIndex(
                name: "IX_Plans_Meal_MadeAt",
                table: "Plans",
                columns: new[] { "Meal", "MadeAt" });

            migrationBuilder.CreateIndex(
                name: "IX_PushSubscriptions_Run_Endpoint",
                table: "PushSubscriptions",
                columns: new[] { "Run", "Endpoint" },
                unique: true);

            migrationBuilder.CreateIndex(
                name: "IX_RunEvents_Run_Command_Part",
                table: "RunEvents",
                columns: new[] { "Run", "Command", "Part" },
                unique: true);

            migrationBuilder.CreateIndex(
                name: "IX_RunRow_Ended",
                table: "RunRow",
                column: "Ended");

            migrationBuilder.CreateIndex(
                name: "IX_Sessions_Person",
                table: "Sessions",
                column: "Person");

            migrationBuilder.CreateIndex(
                name: "IX_ShoppingTaps_Meal_Command",
                table: "ShoppingTaps",
                columns: new[] { "Meal", "Command" },
                unique: true);

            migrationBuilder.CreateIndex(
                name: "IX_ShoppingTaps_Setting_At",
                table: "ShoppingTaps",
                columns: new[] { "Setting", "At" });
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DropTable(
                name: "Again");

            migrationBuilder.DropTable(
                name: "AgainTicks");

            migrationBuilder.DropTable(
                name: "ApiTokens");

            migrationBuilder.DropTable(
                name: "Audit");

            migrationBuilder.DropTable(
                name: "Calls");

            migrationBuilder.DropTable(
                name: "DebriefNotes");

            migrationBuilder.DropTable(
                name: "DebriefPhotos");

            migrationBuilder.DropTable(
                name: "Deliveries");

            migrationBuilder.DropTable(
                name: "DishVersions");

            migrationBuilder.DropTable(
                name: "ForgottenRuns");

            migrationBuilder.DropTable(
                name: "HostInvitations");

            migrationBuilder.DropTable(
                name: "HouseKeys");

            migrationBuilder.DropTable(
                name: "JoinCodes");

            migrationBuilder.DropTable(
                name: "LearnedTimes");

            migrationBuilder.DropTable(
                name: "Leftovers");

            migrationBuilder.DropTable(
                name: "OvenFigures");

            migrationBuilder.DropTable(
                name: "OvenTrials");

            migrationBuilder.DropTable(
                name: "PasskeyChallenges");

            migrationBuilder.DropTable(
                name: "Passkeys");

            migrationBuilder.DropTable(
                name: "Plans");

            migrationBuilder.DropTable(
                name: "PushSubscriptions");

            migrationBuilder.DropTable(
                name: "RunEvents");

            migrationBuilder.DropTable(
                name: "RunRow");

            migrationBuilder.DropTable(
                name: "Sessions");

            migrationBuilder.DropTable(
                name: "Settings");

            migrationBuilder.DropTable(
                name: "ShoppingTaps");

            migrationBuilder.DropTable(
                name: "WrittenTimes");

            migrationBuilder.DropTable(
                name: "Dishes");

            migrationBuilder.DropTable(
                name: "Hosts");

            migrationBuilder.DropTable(
                name: "Meals");
        }
    }
}
