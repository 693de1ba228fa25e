using Microsoft.EntityFrameworkCore.Migrations;

#nullable disable

namespace Cloveshed.Ledger.Migrations
{
    /// <inheritdoc />
    public partial class FirstLedger : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.CreateTable(
                name: "documents",
                columns: table => new
                {
                    sha256 = table.Column<string>(type: "TEXT", maxLength: 64, nullable: false),
                    bytes = table.Column<byte[]>(type: "BLOB", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_documents", x => x.sha256);
                });

            migrationBuilder.CreateTable(
                name: "facts",
                columns: table => new
                {
                    seq = table.Column<long>(type: "INTEGER", nullable: false),
                    id = table.Column<string>(type: "TEXT", maxLength: 36, nullable: false),
                    kind = table.Column<string>(type: "TEXT", maxLength: 40, nullable: false),
                    happened_at = table.Column<string>(type: "TEXT", maxLength: 33, nullable: false),
                    recorded_at = table.Column<string>(type: "TEXT", maxLength: 33, nullable: false),
                    said_by = table.Column<string>(type: "TEXT", maxLength: 200, nullable: false),
                    device = table.Column<string>(type: "TEXT", maxLength: 200, nullable: false),
                    place = table.Column<string>(type: "TEXT", maxLength: 200, nullable: false),
                    body = table.Column<string>(type: "TEXT", nullable: false),
                    corrects = table.Column<string>(type: "TEXT", maxLength: 36, nullable: true),
                    batch = table.Column<string>(type: "TEXT", maxLength: 36, nullable: false),
                    prev = table.Column<string>(type: "TEXT", maxLength: 64, nullable: false),
                    hash = table.Column<string>(type: "TEXT", maxLength: 64, nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_facts", x => x.seq);
                });

            migrationBuilder.CreateTable(
                name: "holds",
                columns: table => new
                {
                    ordinal = table.Column<int>(type: "INTEGER", nullable: false),
                    fact = table.Column<string>(type: "TEXT", maxLength: 36, nullable: false),
                    record = table.Column<string>(type: "TEXT", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_holds", x => x.ordinal);
                });

            migrationBuilder.CreateTable(
                name: "ledger_head",
                columns: table => new
                {
                    one = table.Column<int>(type: "INTEGER", nullable: false),
                    seq = table.Column<long>(type: "INTEGER", nullable: false),
                    hash = table.Column<string>(type: "TEXT", maxLength: 64, nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_ledger_head", x => x.one);
                });

            migrationBuilder.CreateTable(
                name: "plan_ends",
                columns: table => new
                {
                    ordinal = table.Column<int>(type: "INTEGER", nullable: false),
                    fact = table.Column<string>(type: "TEXT", maxLength: 36, nullable: false),
                    record = table.Column<string>(type: "TEXT", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_plan_ends", x => x.ordinal);
                });

            migrationBuilder.CreateTable(
                name: "plan_jobs",
                columns: table => new
                {
                    ordinal = table.Column<int>(type: "INTEGER", nullable: false),
                    fact = table.Column<string>(type: "TEXT", maxLength: 36, nullable: false),
                    record = table.Column<string>(type: "TEXT", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_plan_jobs", x => x.ordinal);
                });

            migrationBuilder.CreateTable(
                name: "plans",
                columns: table => new
                {
                    ordinal = table.Column<int>(type: "INTEGER", nullable: false),
                    fact = table.Column<string>(type: "TEXT", maxLength: 36, nullable: false),
                    record = table.Column<string>(type: "TEXT", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_plans", x => x.ordinal);
                });

            migrationBuilder.CreateTable(
                name: "season_files",
                columns: table => new
                {
                    file = table.Column<string>(type: "TEXT", maxLength: 40, nullable: false),
                    columns = table.Column<string>(type: "TEXT", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_season_files", x => x.file);
                });

            migrationBuilder.CreateTable(
                name: "season_rows",
                columns: table => new
                {
                    file = table.Column<string>(type: "TEXT", maxLength: 40, nullable: false),
                    row = table.Column<int>(type: "INTEGER", nullable: false),
                    cells = table.Column<string>(type: "TEXT", nullable: true),
                    fact = table.Column<string>(type: "TEXT", maxLength: 36, nullable: true),
                    seq = table.Column<long>(type: "INTEGER", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_season_rows", x => new { x.file, x.row });
                });

            migrationBuilder.CreateTable(
                name: "seasons",
                columns: table => new
                {
                    opened = table.Column<string>(type: "TEXT", maxLength: 36, nullable: false),
                    settings = table.Column<string>(type: "TEXT", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_seasons", x => x.opened);
                });

            migrationBuilder.CreateIndex(
                name: "facts_id",
                table: "facts",
                column: "id",
                unique: true);

            migrationBuilder.CreateIndex(
                name: "facts_kind",
                table: "facts",
                column: "kind");
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DropTable(
                name: "documents");

            migrationBuilder.DropTable(
                name: "facts");

            migrationBuilder.DropTable(
                name: "holds");

            migrationBuilder.DropTable(
                name: "ledger_head");

            migrationBuilder.DropTable(
                name: "plan_ends");

            migrationBuilder.DropTable(
                name: "plan_jobs");

            migrationBuilder.DropTable(
                name: "plans");

            migrationBuilder.DropTable(
                name: "season_files");

            migrationBuilder.DropTable(
                name: "season_rows");

            migrationBuilder.DropTable(
                name: "seasons");
        }
    }
}
