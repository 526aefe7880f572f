#!/usr/bin/env bash
# Loads a shared page, a list of pieces and a comparison of two sets with wrk, and a bare Javalin route that answers the same
# bytes and headers; prints a table of requests a second, 99th percentiles and the ratio of the two.
#
#   backend/bench/load.sh                 both databases, 10^3 and 10^5 revisions; about twelve minutes
#   SECONDS_EACH=10 WARM_UP=15 CONNECTIONS=16 REVISIONS="1000 100000" DATABASES="H2 PostgreSQL" backend/bench/load.sh
#
# Needs: JDK 17, Maven, wrk and curl (Debian packages); for PostgreSQL, Docker, or an empty database whose address, user and
# password stand in ROSINBOOK_BENCH_DATABASE (jdbc:postgresql://…), ROSINBOOK_DATABASE_USER, ROSINBOOK_DATABASE_PASSWORD;
# that one is filled once, so give one size in REVISIONS. Everything listens on 127.0.0.1 only and is gone afterwards.
set -euo pipefail
cd "$(dirname "$0")/.."
each=${SECONDS_EACH:-10}
warm=${WARM_UP:-10}
connections=${CONNECTIONS:-16}
read -r -a sizes <<< "${REVISIONS:-1000 100000}"
read -r -a databases <<< "${DATABASES:-H2 PostgreSQL}"
before=$(uptime | sed 's/.*load average: //')
work=$(mktemp -d)
pids=()
container=
cleanup() {
    for pid in "${pids[@]}"; do kill "$pid" 2> /dev/null || true; done
    wait 2> /dev/null || true
    [ -z "$container" ] || docker rm -f "$container" > /dev/null
    rm -rf "$work"
}
trap cleanup EXIT
for program in java mvn wrk curl; do
    command -v "$program" > /dev/null || { echo "this needs $program" >&2; exit 1; }
done

echo "building …" >&2
mvn -q -B -f ../pom.xml -pl backend -DskipTests package
mvn -q -B org.apache.maven.plugins:maven-dependency-plugin:3.8.1:build-classpath \
    -Dmdep.outputFile="$work/classpath" -Dmdep.includeScope=test
classpath="target/test-classes:target/classes:$(cat "$work/classpath")"

await() { # FILE PATTERN: waits until the file has the pattern, and prints it
    for _ in $(seq 600); do
        grep -o "$2" "$1" 2> /dev/null | head -1 | grep . && return 0
        sleep 0.1
    done
    echo "gave up waiting for $2" >&2
    cat "$1" >&2
    exit 1
}

fresh_postgres() { # a database of its own in a container that is made once
    if [ -n "${ROSINBOOK_BENCH_DATABASE:-}" ]; then
        place=$ROSINBOOK_BENCH_DATABASE
        return
    fi
    if [ -z "$container" ]; then
        export ROSINBOOK_DATABASE_USER=rosinbook
        ROSINBOOK_DATABASE_PASSWORD=$(head -c 18 /dev/urandom | base64 | tr -d '/+=')
        export ROSINBOOK_DATABASE_PASSWORD
        container=$(docker run -d -p 127.0.0.1::5432 -e POSTGRES_USER=rosinbook -e POSTGRES_DB=rosinbook \
            -e POSTGRES_PASSWORD="$ROSINBOOK_DATABASE_PASSWORD" "${ROSINBOOK_TEST_POSTGRES:-postgres:15.18-alpine}")
        for _ in $(seq 120); do
            docker exec "$container" pg_isready -q -h 127.0.0.1 -U rosinbook -d rosinbook && break
            sleep 0.5
        done
        sleep 1
    fi
    name=bench_$1
    docker exec -e PGPASSWORD="$ROSINBOOK_DATABASE_PASSWORD" "$container" \
        psql -q -h 127.0.0.1 -U rosinbook -d rosinbook -c "CREATE DATABASE $name"
    place=jdbc:postgresql://$(docker port "$container" 5432/tcp | head -1)/$name
}

figures() { # ADDRESS: requests a second and 99th percentile in milliseconds
    wrk -t1 -c"$connections" -d"${warm}s" "$1" > /dev/null
    wrk -t1 -c"$connections" -d"${each}s" --latency "$1" > "$work/wrk"
    if grep -q 'Non-2xx' "$work/wrk"; then cat "$work/wrk" >&2; exit 1; fi
    awk '/99%/ { p = $2; if (p ~ /us$/) p /= 1000; else if (p ~ /ms$/) p += 0; else p *= 1000 }
         /Requests\/sec/ { r = $2 } END { printf "%.0f %.1f", r, p }' "$work/wrk"
}

table() { # DATABASE REVISIONS
    local database=$1 revisions=$2 served
    if [ "$database" = H2 ]; then
        place=$work/h2-$revisions
        served=(--data "$place" --backups off)
    else
        fresh_postgres "$revisions"
        served=(--database "$place")
    fi
    echo "filling $database with $revisions revisions …" >&2
    java -cp "$classpath" rosinbook.store.LongHistory "$place" "$revisions" > "$work/filled" 2> "$work/filling" \
        || { cat "$work/filling" >&2; exit 1; }
    java -jar target/rosinbook.jar serve --port 0 "${served[@]}" > "$work/served" 2> "$work/log" &
    local server=$!
    pids+=("$server")
    local base pages
    base=$(await "$work/served" 'http://127.0.0.1:[0-9]*')
    mapfile -t pages < <(java -cp "$classpath" rosinbook.web.LoadedPages "$base")
    [ "${#pages[@]}" -eq 3 ] || { echo "the pages to load were not found" >&2; exit 1; }
    java -cp "$classpath" rosinbook.web.BareRoute "${pages[@]}" > "$work/bare" 2> "$work/bare-log" &
    local bare=$!
    pids+=("$bare")
    local plain what=("shared page" "list of pieces" "comparison of two sets")
    plain=$(await "$work/bare" 'http://127.0.0.1:[0-9]*')
    for i in 0 1 2; do
        local ours theirs bytes
        echo "loading the ${what[$i]} …" >&2
        bytes=$(curl -sf "${pages[$i]}" | wc -c)
        read -r -a ours <<< "$(figures "${pages[$i]}")"
        read -r -a theirs <<< "$(figures "$plain/$i")"
        awk -v d="$database" -v n="$revisions" -v w="${what[$i]}" -v b="$bytes" -v r="${ours[0]}" -v p="${ours[1]}" \
            -v br="${theirs[0]}" -v bp="${theirs[1]}" 'BEGIN {
                printf "| %s, %d kB | %s | %s | %d | %.1f ms | %d | %.1f ms | %.2f |\n",
                    w, (b + 500) / 1000, d, n, r, p, br, bp, r / br }'
    done
    kill "$server" "$bare"
    wait "$server" "$bare" 2> /dev/null || true
}

rows=$(for database in "${databases[@]}"; do for size in "${sizes[@]}"; do echo "$database $size"; done; done)
echo "| page | database | revisions | requests/s | 99 % | bare route | 99 % | ratio |"
echo "| --- | --- | --- | --- | --- | --- | --- | --- |"
while read -r database size; do table "$database" "$size" < /dev/null; done <<< "$rows"
echo
echo "$connections connections, $each s each after $warm s of warming up, wrk on the same machine; $(nproc) cores;" \
    "$(java -version 2>&1 | sed -n 2p); load average before: $before."
