using Microsoft.EntityFrameworkCore.Migrations;

#nullable disable

namespace CookAlong.Web.Data.Migrations
{
    /// <inheritdoc />
    public partial class ShoppingSettings : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            // The order of the aisles was kept as moves of one place, which say nothing without all that were before them.
            migrationBuilder.Sql("DELETE FROM ShoppingTaps WHERE IsOfHousehold = 1;");

            migrationBuilder.DropIndex(
                name: "IX_ShoppingTaps_IsOfHousehold",
                table: "ShoppingTaps");

            migrationBuilder.DropColumn(
                name: "IsOfHousehold",
                table: "ShoppingTaps");

            migrationBuilder.AddColumn<string>(
                name: "Setting",
                table: "ShoppingTaps",
                type: "TEXT",
                nullable: true);

            migrationBuilder.CreateIndex(
                name: "IX_ShoppingTaps_Setting_At",
                table: "ShoppingTaps",
                columns: new[] { "Setting", "At" });
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DropIndex(
                name: "IX_ShoppingTaps_Setting_At",
                table: "ShoppingTaps");

            migrationBuilder.DropColumn(
                name: "Setting",
                table: "ShoppingTaps");

            migrationBuilder.AddColumn<bool>(
                name: "IsOfHousehold",
                table: "ShoppingTaps",
                type: "INTEGER",
                nullable: false,
                defaultValue: false);

            migrationBuilder.CreateIndex(
                name: "IX_ShoppingTaps_IsOfHousehold",
                table: "ShoppingTaps",
                column: "IsOfHousehold");
        }
    }
}
