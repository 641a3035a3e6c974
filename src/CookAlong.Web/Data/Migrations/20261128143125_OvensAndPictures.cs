using System;
using Microsoft.EntityFrameworkCore.Migrations;

#nullable disable

namespace CookAlong.Web.Data.Migrations
{
    /// <inheritdoc />
    public partial class OvensAndPictures : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.CreateTable(
                name: "AgainTicks",
                columns: table => new
                {
                    Meal = table.Column<Guid>(type: "TEXT", nullable: false),
                    Item = table.Column<string>(type: "TEXT", nullable: false)
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
                name: "DebriefPhotos",
                columns: table => new
                {
                    Id = table.Column<Guid>(type: "TEXT", nullable: false),
                    Run = table.Column<Guid>(type: "TEXT", nullable: false),
                    Dish = table.Column<string>(type: "TEXT", nullable: false),
                    Kind = table.Column<string>(type: "TEXT", nullable: false),
                    Image = table.Column<byte[]>(type: "BLOB", nullable: false),
                    AddedAt = table.Column<long>(type: "INTEGER", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_DebriefPhotos", x => x.Id);
                });

            migrationBuilder.CreateTable(
                name: "OvenFigures",
                columns: table => new
                {
                    Oven = table.Column<string>(type: "TEXT", nullable: false),
                    HeatUpPerMinute = table.Column<double>(type: "REAL", nullable: true),
                    CoolDownPerMinute = table.Column<double>(type: "REAL", nullable: true),
                    ReadsHighBy = table.Column<int>(type: "INTEGER", nullable: true),
                    AcceptedAt = table.Column<long>(type: "INTEGER", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_OvenFigures", x => x.Oven);
                });

            migrationBuilder.CreateTable(
                name: "OvenTrials",
                columns: table => new
                {
                    Id = table.Column<Guid>(type: "TEXT", nullable: false),
                    Oven = table.Column<string>(type: "TEXT", nullable: false),
                    Dial = table.Column<int>(type: "INTEGER", nullable: false),
                    Began = table.Column<long>(type: "INTEGER", nullable: false),
                    DoorShut = table.Column<long>(type: "INTEGER", nullable: true),
                    Off = table.Column<long>(type: "INTEGER", nullable: true),
                    Ended = table.Column<long>(type: "INTEGER", nullable: true),
                    Document = table.Column<string>(type: "TEXT", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_OvenTrials", x => x.Id);
                });

            migrationBuilder.CreateIndex(
                name: "IX_DebriefPhotos_Run",
                table: "DebriefPhotos",
                column: "Run");
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DropTable(
                name: "AgainTicks");

            migrationBuilder.DropTable(
                name: "DebriefPhotos");

            migrationBuilder.DropTable(
                name: "OvenFigures");

            migrationBuilder.DropTable(
                name: "OvenTrials");
        }
    }
}
