using System;
using Microsoft.EntityFrameworkCore.Migrations;

#nullable disable

namespace CookAlong.Web.Data.Migrations
{
    /// <inheritdoc />
    public partial class SettingsAndLeftovers : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.CreateTable(
                name: "Leftovers",
                columns: table => new
                {
                    Meal = table.Column<Guid>(type: "TEXT", nullable: false),
                    Dish = table.Column<string>(type: "TEXT", nullable: false),
                    Portions = table.Column<int>(type: "INTEGER", nullable: false),
                    Kinds = table.Column<string>(type: "TEXT", nullable: true),
                    OffTheHeatAt = table.Column<long>(type: "INTEGER", nullable: true)
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
                name: "Settings",
                columns: table => new
                {
                    Id = table.Column<int>(type: "INTEGER", nullable: false),
                    FoodRegion = table.Column<string>(type: "TEXT", nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_Settings", x => x.Id);
                });
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DropTable(
                name: "Leftovers");

            migrationBuilder.DropTable(
                name: "Settings");
        }
    }
}
