#!/usr/bin/env bash
# The way of docs/reliability.md for a server of one's own, tried on a private PostgreSQL: dump, throw away, restore, compare.
#   tests/Trials/own-server-dump.sh [FOLDER OF POSTGRESQL'S PROGRAMS]      after: dotnet build src/Guide -c Release
# As root the server runs under the account "postgres". Nothing is left behind.
set -euo pipefail
cd "$(dirname "${BASH_SOURCE[0]}")/../.."
programs=${1:-$(ls -d /usr/lib/postgresql/*/bin | sort -V | tail -1)}
folder=$(mktemp -d)
chmod 755 "$folder"
mkdir "$folder/socket"
as=()
if ((EUID == 0)); then
    chown -R postgres "$folder"
    as=(setpriv --reuid=postgres --regid=postgres --clear-groups env --chdir=/)
fi
finish() {
    "${as[@]}" "$programs/pg_ctl" stop -D "$folder/data" -m immediate -s || true
    rm -rf "$folder"
}
trap finish EXIT

printf 'admin-word' >"$folder/word"
"${as[@]}" "$programs/initdb" -D "$folder/data" -U postgres -A scram-sha-256 --pwfile="$folder/word" -E UTF8 --locale=C.UTF-8 >/dev/null
"${as[@]}" "$programs/pg_ctl" start -D "$folder/data" -l "$folder/log" -w -s -o "-c listen_addresses='' -c unix_socket_directories=$folder/socket"
chmod 755 "$folder/socket"

site() {
    ConnectionStrings__GuideAdmin="Host=$folder/socket;Database=postgres;Username=postgres;Password=admin-word" \
        ConnectionStrings__GuideOwner="Host=$folder/socket;Database=foreshore;Username=foreshore_owner;Password=owner-word" \
        ConnectionStrings__Guide="Host=$folder/socket;Database=foreshore;Username=foreshore_app;Password=app-word" \
        dotnet src/Guide/bin/Release/net10.0/Foreshore.Guide.dll "$@"
}
owner() { PGPASSWORD=owner-word "$programs/$1" -h "$folder/socket" -U foreshore_owner "${@:2}"; }
admin() { PGPASSWORD=admin-word "$programs/$1" -h "$folder/socket" -U postgres "${@:2}"; }
sums() {
    for table in $(owner psql -d foreshore -Atc "SELECT tablename FROM pg_tables WHERE schemaname = 'public' ORDER BY 1"); do
        printf '%s ' "$table"
        owner psql -d foreshore -Atc "SELECT count(*), md5(coalesce(string_agg(each::text, '|' ORDER BY each::text), '')) FROM \"$table\" AS each"
    done
}

site migrate
site demo
before=$(sums)

# As in the documentation.
owner pg_dump --format=custom --file="$folder/foreshore.dump" foreshore
admin dropdb foreshore
site migrate
admin dropdb foreshore
admin createdb --owner=foreshore_owner --template=template0 --encoding=UTF8 foreshore
owner pg_restore --dbname=foreshore --exit-on-error --single-transaction --no-owner "$folder/foreshore.dump"
site migrate

if [[ $(sums) == "$before" ]]; then
    echo "Every table is as it was: $(wc -l <<<"$before") tables, PostgreSQL $("$programs/postgres" --version | grep -oE '[0-9.]+' | head -1)."
else
    diff <(echo "$before") <(sums) || true
    echo "The tables differ."
    exit 1
fi
