using Microsoft.EntityFrameworkCore.Migrations;

#nullable disable

namespace Cloveshed.Ledger.Migrations
{
    /// <inheritdoc />
    public partial class LineRecords : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.CreateTable(
                name: "drum_settings",
                columns: table => new
                {
                    ordinal = table.Column<int>(type: "INTEGER", nullable: false),
                    fact = table.Column<string>(type: "TEXT", maxLength: 36, nullable: false),
                    record = table.Column<string>(type: "TEXT", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_drum_settings", x => x.ordinal);
                });

            migrationBuilder.CreateTable(
                name: "sizer_counts",
                columns: table => new
                {
                    ordinal = table.Column<int>(type: "INTEGER", nullable: false),
                    fact = table.Column<string>(type: "TEXT", maxLength: 36, nullable: false),
                    record = table.Column<string>(type: "TEXT", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_sizer_counts", x => x.ordinal);
                });

            migrationBuilder.CreateTable(
                name: "sizer_settings",
                columns: table => new
                {
                    ordinal = table.Column<int>(type: "INTEGER", nullable: false),
                    fact = table.Column<string>(type: "TEXT", maxLength: 36, nullable: false),
                    record = table.Column<string>(type: "TEXT", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_sizer_settings", x => x.ordinal);
                });
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DropTable(
                name: "drum_settings");

            migrationBuilder.DropTable(
                name: "sizer_counts");

            migrationBuilder.DropTable(
                name: "sizer_settings");
        }
    }
}
