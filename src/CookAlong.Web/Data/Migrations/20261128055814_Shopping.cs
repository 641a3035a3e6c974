using System;
using Microsoft.EntityFrameworkCore.Migrations;

#nullable disable

namespace CookAlong.Web.Data.Migrations
{
    /// <inheritdoc />
    public partial class Shopping : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.CreateTable(
                name: "ShoppingTaps",
                columns: table => new
                {
                    Meal = table.Column<Guid>(type: "TEXT", nullable: false),
                    Sequence = table.Column<long>(type: "INTEGER", nullable: false),
                    Command = table.Column<Guid>(type: "TEXT", nullable: false),
                    By = table.Column<Guid>(type: "TEXT", nullable: false),
                    At = table.Column<long>(type: "INTEGER", nullable: false),
                    IsOfHousehold = table.Column<bool>(type: "INTEGER", nullable: false),
                    Document = table.Column<string>(type: "TEXT", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_ShoppingTaps", x => new { x.Meal, x.Sequence });
                });

            migrationBuilder.CreateIndex(
                name: "IX_ShoppingTaps_IsOfHousehold",
                table: "ShoppingTaps",
                column: "IsOfHousehold");

            migrationBuilder.CreateIndex(
                name: "IX_ShoppingTaps_Meal_Command",
                table: "ShoppingTaps",
                columns: new[] { "Meal", "Command" },
                unique: true);
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DropTable(
                name: "ShoppingTaps");
        }
    }
}
