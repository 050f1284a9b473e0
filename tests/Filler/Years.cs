using Npgsql;

namespace Foreshore.Filler;

/// <summary>
/// What a club's years leave behind. One member may report thirty hazards a day, which makes eleven thousand a year; that many,
/// and twenty more of each place, are reported here, and nearly all have ended.
/// </summary>
internal static class Years
{
    private const int ReportsAYear = 30 * 365;

    private static readonly (string Table, string Rows)[] Tables =
    [
        ("members", """
            SELECT gen_random_uuid(), 'Member ' || n, 'member' || n || '@ternbank.example', CASE WHEN n % 20 = 0 THEN 'Warden' ELSE 'Member' END,
                   'unusable', 0, now() - random() * @years * interval '1 year'
            FROM generate_series(1, 40 + 20 * @years) n
            """),
        ("hazard_notes", """
            SELECT p.id, k.kinds[1 + floor(random() * 13)::int], s.severity,
                   'The path is slippery after rain, and a rope that was there last year is gone. Keep to the landward side.',
                   'Between the gate and the first ledge', d.day, CASE WHEN s.severity < 4 OR s.state <> 'Reported' THEN d.day + 20 END, s.state, gen_random_uuid(),
                   m.id, d.day + interval '9 hours', CASE WHEN s.state <> 'Reported' THEN m.id END, CASE WHEN s.state <> 'Reported' THEN d.day + interval '30 hours' END,
                   CASE WHEN s.state = 'Confirmed' THEN d.day + 1 END
            FROM generate_series(1, @reports) n
            CROSS JOIN LATERAL (SELECT ids[1 + (n * 7919 + floor(random() * 13)::int) % cardinality(ids)] AS id FROM places) p
            CROSS JOIN LATERAL (SELECT ids[1 + (n * 31) % cardinality(ids)] AS id FROM people) m
            CROSS JOIN LATERAL (SELECT current_date - 1 - floor(random() * 365 * @years)::int + 0 * n AS day) d
            CROSS JOIN LATERAL (SELECT CASE WHEN n % 1000 < 8 THEN 'Reported' WHEN n % 1000 < 60 THEN 'Confirmed' WHEN n % 10 = 7 THEN 'Rejected' ELSE 'Ended' END AS state,
                                       CASE WHEN n % 1000 = 8 THEN 4 ELSE n % 4 END AS severity) s
            CROSS JOIN (SELECT ARRAY['Waves','BoatWash','Slip','Fall','Rockfall','CutOff','SoftGround','ColdWater','Path','Animals','Traffic','Firing','Other'] AS kinds) k
            """),
        ("closures", """
            SELECT p.id, 'Location', 'Nesting birds; the county asks all to stay away.', 'The county', c.state, d.day, d.day + 30, gen_random_uuid(), d.day + interval '8 hours',
                   CASE WHEN c.state = 'Lifted' THEN d.day + interval '40 days' END, false, false
            FROM generate_series(1, @closures) n
            CROSS JOIN LATERAL (SELECT ids[1 + n % cardinality(ids)] AS id FROM places) p
            CROSS JOIN LATERAL (SELECT current_date - 60 - floor(random() * 365 * @years)::int + 0 * n AS day) d
            CROSS JOIN LATERAL (SELECT CASE WHEN n % 4 = 0 THEN 'InForce' ELSE 'Lifted' END AS state) c
            """),
        ("proposals", """
            SELECT gen_random_uuid(), 'Place', p.id, p.id, m.id, jsonb_build_object('summary', 'A bay of round stones under low cliffs, number ' || n), '{"summary": "A bay of round stones"}'::jsonb,
                   'Seen on the club''s walk', s.state, t.at, t.at, CASE WHEN s.state NOT IN ('Draft', 'Withdrawn') THEN t.at END,
                   CASE WHEN s.state IN ('Accepted', 'Declined') THEN m.id END, CASE WHEN s.state IN ('Accepted', 'Declined') THEN t.at + interval '1 day' END, false
            FROM generate_series(1, @proposals) n
            CROSS JOIN LATERAL (SELECT ids[1 + n % cardinality(ids)] AS id FROM places) p
            CROSS JOIN LATERAL (SELECT ids[1 + (n * 17) % cardinality(ids)] AS id FROM people) m
            CROSS JOIN LATERAL (SELECT now() - interval '1 day' - random() * @years * interval '1 year' + 0 * n * interval '1 day' AS at) t
            CROSS JOIN LATERAL (SELECT CASE WHEN n % 100 < 2 THEN 'Sent' WHEN n % 100 < 5 THEN 'Draft' WHEN n % 100 < 25 THEN 'Declined' ELSE 'Accepted' END AS state) s
            """),
        ("revisions", """
            SELECT 'Place', p.id, p.id, jsonb_build_array(), 'Seen on the club''s walk', m.id, m.id, now() - interval '1 day' - random() * @years * interval '1 year' + 0 * n * interval '1 day', false
            FROM generate_series(1, @proposals) n
            CROSS JOIN LATERAL (SELECT ids[1 + n % cardinality(ids)] AS id FROM places) p
            CROSS JOIN LATERAL (SELECT ids[1 + (n * 17) % cardinality(ids)] AS id FROM people) m
            """),
        ("audit_entries", """
            SELECT CASE WHEN n % 3 = 0 THEN 'HazardEnded' ELSE 'SignedIn' END, now() - random() * @years * interval '1 year' + 0 * n * interval '1 day', m.id, NULL::uuid, 'Herring Slip: waves'
            FROM generate_series(1, @log) n
            CROSS JOIN LATERAL (SELECT ids[1 + n % cardinality(ids)] AS id FROM people) m
            """),
        ("member_sessions", """
            SELECT gen_random_uuid(), m.id, t.at, t.at, 'Firefox on Linux', 'password', 1
            FROM generate_series(1, @sessions) n
            CROSS JOIN LATERAL (SELECT ids[1 + n % cardinality(ids)] AS id FROM people) m
            CROSS JOIN LATERAL (SELECT now() - random() * @years * interval '1 year' + 0 * n * interval '1 day' AS at) t
            """),
    ];

    private static readonly Dictionary<string, string> Columns = new()
    {
        ["members"] = "id, name, email, role, password_hash, last_code_step, joined_at",
        ["hazard_notes"] = "location_id, kind, severity, text, place, \"from\", until, state, form_id, reported_by, reported_at, decided_by, decided_at, confirmed_on",
        ["closures"] = "location_id, target, reason, closed_by, state, \"from\", until, form_id, made_at, lifted_at, is_near_miss, is_lifted_single_handed",
        ["proposals"] = "id, matter, location_id, target_id, proposer_id, given, found, reason, state, started_at, kept_at, sent_at, decided_by, decided_at, is_single_handed",
        ["revisions"] = "matter, target_id, location_id, changes, reason, by, accepted_by, at, is_single_handed",
        ["audit_entries"] = "act, at, by, about, words",
        ["member_sessions"] = "id, member_id, began_at, seen_at, device, way, factors",
    };

    public static async Task<IReadOnlyList<(string Table, long Rows)>> FillAsync(string connection, Asked asked)
    {
        await using var open = new NpgsqlConnection(connection);
        await open.OpenAsync();
        var filled = new List<(string, long)>();
        if (asked.Years == 0)
            return filled;

        // One session and no helpers of it: the same seed draws the same numbers.
        await RunAsync("SET max_parallel_workers_per_gather = 0");
        await RunAsync($"SELECT setseed({FormattableString.Invariant($"{1.0 / asked.Seed}")})");
        foreach (var (table, rows) in Tables)
            filled.Add((table, await RunAsync($"""
                WITH places AS MATERIALIZED (SELECT array_agg(id ORDER BY id) AS ids FROM locations),
                     people AS MATERIALIZED (SELECT array_agg(id ORDER BY email) AS ids FROM members)
                INSERT INTO {table} ({Columns[table]}) {rows}
                """)));
        return filled;

        async Task<long> RunAsync(string sql)
        {
            await using var command = new NpgsqlCommand(sql, open) { CommandTimeout = 600 };
            var places = 15 * asked.Times;
            foreach (var (name, value) in new[]
            {
                ("years", asked.Years), ("reports", asked.Years * (ReportsAYear + 20 * places)), ("closures", 4 * asked.Years * places),
                ("proposals", asked.Years * (1000 + 10 * places)), ("log", asked.Years * (20_000 + 20 * places)), ("sessions", asked.Years * 2000),
            })
                if (sql.Contains($"@{name}", StringComparison.Ordinal))
                    command.Parameters.AddWithValue(name, value);
            return await command.ExecuteNonQueryAsync();
        }
    }
}
