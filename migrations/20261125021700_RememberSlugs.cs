using Microsoft.EntityFrameworkCore.Infrastructure;
using Microsoft.EntityFrameworkCore.Migrations;

namespace Foreshore.Guide.Migrations;

/// <summary>
/// Keeps every slug ever given, so that none is given twice in the same parent and old addresses can answer 301. A trigger,
/// because the rule must hold whoever writes, and after the place is gone.
/// </summary>
[DbContext(typeof(GuideDb))]
[Migration("20261125021700_RememberSlugs")]
public sealed class RememberSlugs : Migration
{
    protected override void Up(MigrationBuilder migrationBuilder)
    {
        migrationBuilder.Sql("""
            CREATE FUNCTION remember_slug() RETURNS trigger LANGUAGE plpgsql AS $body$
            DECLARE
                scope text := TG_ARGV[0] || COALESCE(':' || (to_jsonb(NEW) ->> TG_ARGV[1]), '');
            BEGIN
                INSERT INTO used_slugs (parent, slug, target_id) VALUES (scope, NEW.slug, NEW.id) ON CONFLICT DO NOTHING;
                IF (SELECT target_id FROM used_slugs WHERE parent = scope AND slug = NEW.slug) <> NEW.id THEN
                    RAISE EXCEPTION 'The address name "%" has been used before there; addresses are never reused.', NEW.slug
                        USING ERRCODE = 'unique_violation', CONSTRAINT = 'pk_used_slugs', TABLE = 'used_slugs';
                END IF;
                RETURN NULL;
            END
            $body$;

            CREATE TRIGGER remember_slug AFTER INSERT OR UPDATE OF slug ON locations
                FOR EACH ROW EXECUTE FUNCTION remember_slug('coast');
            CREATE TRIGGER remember_slug AFTER INSERT OR UPDATE OF slug, location_id ON vantage_points
                FOR EACH ROW EXECUTE FUNCTION remember_slug('location', 'location_id');
            CREATE TRIGGER remember_slug AFTER INSERT OR UPDATE OF slug, vantage_point_id ON compositions
                FOR EACH ROW EXECUTE FUNCTION remember_slug('vantage', 'vantage_point_id');
            """);
    }
}
