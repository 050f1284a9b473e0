using Microsoft.EntityFrameworkCore.Migrations;

#nullable disable

namespace Foreshore.Guide.Migrations
{
    /// <inheritdoc />
    public partial class HoursAndSailings : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.AlterColumn<string>(
                name: "hours_text",
                table: "legs",
                type: "character varying(300)",
                maxLength: 300,
                nullable: true,
                oldClrType: typeof(string),
                oldType: "character varying(200)",
                oldMaxLength: 200,
                oldNullable: true);

            migrationBuilder.AddColumn<string>(
                name: "ask_whom",
                table: "parking_areas",
                type: "character varying(200)",
                maxLength: 200,
                nullable: true);

            migrationBuilder.AddColumn<string>(
                name: "hours",
                table: "parking_areas",
                type: "character varying(1000)",
                maxLength: 1000,
                nullable: true);

            migrationBuilder.AddColumn<string>(
                name: "ask_whom",
                table: "locations",
                type: "character varying(200)",
                maxLength: 200,
                nullable: true);

            migrationBuilder.AddColumn<string>(
                name: "hours",
                table: "locations",
                type: "character varying(1000)",
                maxLength: 1000,
                nullable: true);

            migrationBuilder.AddColumn<string>(
                name: "ask_whom",
                table: "legs",
                type: "character varying(200)",
                maxLength: 200,
                nullable: true);

            migrationBuilder.AddColumn<string>(
                name: "ferry_back",
                table: "legs",
                type: "character varying(1000)",
                maxLength: 1000,
                nullable: true);

            migrationBuilder.AddColumn<string>(
                name: "ferry_out",
                table: "legs",
                type: "character varying(1000)",
                maxLength: 1000,
                nullable: true);

            migrationBuilder.AddColumn<string>(
                name: "hours",
                table: "legs",
                type: "character varying(1000)",
                maxLength: 1000,
                nullable: true);

            // Values of every day become rules of every day. Hours that stand beside words, or of which one half is known, go into the
            // words: the words may shut it on other days, so the hours are to be entered by somebody who reads them.
            migrationBuilder.Sql("""
                UPDATE legs SET hours = to_char(opens_at, 'HH24:MI') || '-' || CASE closes_at WHEN time '00:00' THEN '24:00' ELSE to_char(closes_at, 'HH24:MI') END
                WHERE opens_at <> closes_at AND hours_text IS NULL;

                UPDATE legs SET hours_text = CASE
                        WHEN closes_at IS NULL THEN 'opens ' || to_char(opens_at, 'HH24:MI') || ', when it shuts is not recorded'
                        WHEN opens_at IS NULL THEN 'shuts ' || to_char(closes_at, 'HH24:MI') || ', when it opens is not recorded'
                        ELSE to_char(opens_at, 'HH24:MI') || '–' || to_char(closes_at, 'HH24:MI') END || COALESCE(': ' || hours_text, '')
                WHERE hours IS NULL AND (opens_at IS NOT NULL OR closes_at IS NOT NULL);

                UPDATE parking_areas SET hours = to_char(locked_until, 'HH24:MI') || '-' || CASE locked_from WHEN time '00:00' THEN '24:00' ELSE to_char(locked_from, 'HH24:MI') END
                WHERE locked_from <> locked_until;

                UPDATE legs SET ferry_out = 'first ' || to_char(ferry_first_sailing, 'HH24:MI') || ' last ' || to_char(ferry_last_sailing, 'HH24:MI')
                    || CASE WHEN ferry_interval_minutes BETWEEN 1 AND 1440 AND ferry_interval_minutes = floor(ferry_interval_minutes) THEN ' every ' || ferry_interval_minutes::int ELSE '' END
                WHERE ferry_first_sailing IS NOT NULL;

                UPDATE legs SET ferry_back = ferry_out;
                """);

            migrationBuilder.AddCheckConstraint(
                name: "ck_parking_areas_hours",
                table: "parking_areas",
                sql: "(hours || '; ') ~ '^(([0-9]{1,2} (Jan|Feb|Mar|Apr|May|Jun|Jul|Aug|Sep|Oct|Nov|Dec)-[0-9]{1,2} (Jan|Feb|Mar|Apr|May|Jun|Jul|Aug|Sep|Oct|Nov|Dec) )?((Mon|Tue|Wed|Thu|Fri|Sat|Sun)(-(Mon|Tue|Wed|Thu|Fri|Sat|Sun))?(,(Mon|Tue|Wed|Thu|Fri|Sat|Sun)(-(Mon|Tue|Wed|Thu|Fri|Sat|Sun))?)* )?(open|closed|by permit|on request|(([01][0-9]|2[0-3]):[0-5][0-9]-(([01][0-9]|2[0-3]):[0-5][0-9]|24:00)|([0-9]{1,3} min (before|after) )?(sunrise|sunset)-([0-9]{1,3} min (before|after) )?(sunrise|sunset))( or by permit)?); )+$'");

            migrationBuilder.AddCheckConstraint(
                name: "ck_locations_hours",
                table: "locations",
                sql: "(hours || '; ') ~ '^(([0-9]{1,2} (Jan|Feb|Mar|Apr|May|Jun|Jul|Aug|Sep|Oct|Nov|Dec)-[0-9]{1,2} (Jan|Feb|Mar|Apr|May|Jun|Jul|Aug|Sep|Oct|Nov|Dec) )?((Mon|Tue|Wed|Thu|Fri|Sat|Sun)(-(Mon|Tue|Wed|Thu|Fri|Sat|Sun))?(,(Mon|Tue|Wed|Thu|Fri|Sat|Sun)(-(Mon|Tue|Wed|Thu|Fri|Sat|Sun))?)* )?(open|closed|by permit|on request|(([01][0-9]|2[0-3]):[0-5][0-9]-(([01][0-9]|2[0-3]):[0-5][0-9]|24:00)|([0-9]{1,3} min (before|after) )?(sunrise|sunset)-([0-9]{1,3} min (before|after) )?(sunrise|sunset))( or by permit)?); )+$'");

            migrationBuilder.AddCheckConstraint(
                name: "ck_legs_ferry_back",
                table: "legs",
                sql: "ferry_back = '' OR (ferry_back || '; ') ~ '^((([0-9]{1,2} (Jan|Feb|Mar|Apr|May|Jun|Jul|Aug|Sep|Oct|Nov|Dec)-[0-9]{1,2} (Jan|Feb|Mar|Apr|May|Jun|Jul|Aug|Sep|Oct|Nov|Dec) )?((Mon|Tue|Wed|Thu|Fri|Sat|Sun)(-(Mon|Tue|Wed|Thu|Fri|Sat|Sun))?(,(Mon|Tue|Wed|Thu|Fri|Sat|Sun)(-(Mon|Tue|Wed|Thu|Fri|Sat|Sun))?)* )?(first ([01][0-9]|2[0-3]):[0-5][0-9] last ([01][0-9]|2[0-3]):[0-5][0-9]( every [0-9]{1,4})?|([01][0-9]|2[0-3]):[0-5][0-9]( ([01][0-9]|2[0-3]):[0-5][0-9])*|on request|no sailings)|agreed [0-9]{4}-[0-9]{2}-[0-9]{2} ([01][0-9]|2[0-3]):[0-5][0-9]); )+$'");

            migrationBuilder.AddCheckConstraint(
                name: "ck_legs_ferry_out",
                table: "legs",
                sql: "ferry_out = '' OR (ferry_out || '; ') ~ '^((([0-9]{1,2} (Jan|Feb|Mar|Apr|May|Jun|Jul|Aug|Sep|Oct|Nov|Dec)-[0-9]{1,2} (Jan|Feb|Mar|Apr|May|Jun|Jul|Aug|Sep|Oct|Nov|Dec) )?((Mon|Tue|Wed|Thu|Fri|Sat|Sun)(-(Mon|Tue|Wed|Thu|Fri|Sat|Sun))?(,(Mon|Tue|Wed|Thu|Fri|Sat|Sun)(-(Mon|Tue|Wed|Thu|Fri|Sat|Sun))?)* )?(first ([01][0-9]|2[0-3]):[0-5][0-9] last ([01][0-9]|2[0-3]):[0-5][0-9]( every [0-9]{1,4})?|([01][0-9]|2[0-3]):[0-5][0-9]( ([01][0-9]|2[0-3]):[0-5][0-9])*|on request|no sailings)|agreed [0-9]{4}-[0-9]{2}-[0-9]{2} ([01][0-9]|2[0-3]):[0-5][0-9]); )+$'");

            migrationBuilder.AddCheckConstraint(
                name: "ck_legs_hours",
                table: "legs",
                sql: "(hours || '; ') ~ '^(([0-9]{1,2} (Jan|Feb|Mar|Apr|May|Jun|Jul|Aug|Sep|Oct|Nov|Dec)-[0-9]{1,2} (Jan|Feb|Mar|Apr|May|Jun|Jul|Aug|Sep|Oct|Nov|Dec) )?((Mon|Tue|Wed|Thu|Fri|Sat|Sun)(-(Mon|Tue|Wed|Thu|Fri|Sat|Sun))?(,(Mon|Tue|Wed|Thu|Fri|Sat|Sun)(-(Mon|Tue|Wed|Thu|Fri|Sat|Sun))?)* )?(open|closed|by permit|on request|(([01][0-9]|2[0-3]):[0-5][0-9]-(([01][0-9]|2[0-3]):[0-5][0-9]|24:00)|([0-9]{1,3} min (before|after) )?(sunrise|sunset)-([0-9]{1,3} min (before|after) )?(sunrise|sunset))( or by permit)?); )+$'");
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.AlterColumn<string>(
                name: "hours_text",
                table: "legs",
                type: "character varying(200)",
                maxLength: 200,
                nullable: true,
                oldClrType: typeof(string),
                oldType: "character varying(300)",
                oldMaxLength: 300,
                oldNullable: true);

            migrationBuilder.DropCheckConstraint(
                name: "ck_parking_areas_hours",
                table: "parking_areas");

            migrationBuilder.DropCheckConstraint(
                name: "ck_locations_hours",
                table: "locations");

            migrationBuilder.DropCheckConstraint(
                name: "ck_legs_ferry_back",
                table: "legs");

            migrationBuilder.DropCheckConstraint(
                name: "ck_legs_ferry_out",
                table: "legs");

            migrationBuilder.DropCheckConstraint(
                name: "ck_legs_hours",
                table: "legs");

            migrationBuilder.DropColumn(
                name: "ask_whom",
                table: "parking_areas");

            migrationBuilder.DropColumn(
                name: "hours",
                table: "parking_areas");

            migrationBuilder.DropColumn(
                name: "ask_whom",
                table: "locations");

            migrationBuilder.DropColumn(
                name: "hours",
                table: "locations");

            migrationBuilder.DropColumn(
                name: "ask_whom",
                table: "legs");

            migrationBuilder.DropColumn(
                name: "ferry_back",
                table: "legs");

            migrationBuilder.DropColumn(
                name: "ferry_out",
                table: "legs");

            migrationBuilder.DropColumn(
                name: "hours",
                table: "legs");
        }
    }
}
