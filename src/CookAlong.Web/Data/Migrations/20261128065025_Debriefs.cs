using System;
using Microsoft.EntityFrameworkCore.Migrations;

#nullable disable

namespace CookAlong.Web.Data.Migrations
{
    /// <inheritdoc />
    public partial class Debriefs : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.CreateTable(
                name: "DebriefNotes",
                columns: table => new
                {
                    Run = table.Column<Guid>(type: "TEXT", nullable: false),
                    Dish = table.Column<string>(type: "TEXT", nullable: false),
                    Verdict = table.Column<string>(type: "TEXT", nullable: false),
                    Note = table.Column<string>(type: "TEXT", nullable: false),
                    ChangedAt = table.Column<long>(type: "INTEGER", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_DebriefNotes", x => new { x.Run, x.Dish });
                });

            migrationBuilder.CreateTable(
                name: "LearnedTimes",
                columns: table => new
                {
                    Dish = table.Column<string>(type: "TEXT", nullable: false),
                    Text = table.Column<string>(type: "TEXT", nullable: false),
                    DishName = table.Column<string>(type: "TEXT", nullable: false),
                    Least = table.Column<double>(type: "REAL", nullable: false),
                    Likely = table.Column<double>(type: "REAL", nullable: false),
                    Most = table.Column<double>(type: "REAL", nullable: false),
                    Meals = table.Column<int>(type: "INTEGER", nullable: false),
                    AcceptedAt = table.Column<long>(type: "INTEGER", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_LearnedTimes", x => new { x.Dish, x.Text });
                });

            migrationBuilder.CreateTable(
                name: "WrittenTimes",
                columns: table => new
                {
                    Run = table.Column<Guid>(type: "TEXT", nullable: false),
                    Step = table.Column<string>(type: "TEXT", nullable: false),
                    Option = table.Column<int>(type: "INTEGER", nullable: false),
                    Least = table.Column<int>(type: "INTEGER", nullable: false),
                    Likely = table.Column<int>(type: "INTEGER", nullable: false),
                    Most = table.Column<int>(type: "INTEGER", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_WrittenTimes", x => new { x.Run, x.Step, x.Option });
                });
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DropTable(
                name: "DebriefNotes");

            migrationBuilder.DropTable(
                name: "LearnedTimes");

            migrationBuilder.DropTable(
                name: "WrittenTimes");
        }
    }
}
