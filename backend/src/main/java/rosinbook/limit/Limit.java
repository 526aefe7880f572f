package rosinbook.limit;

import java.util.Locale;

/** Everything that is let in up to a bound, with the name of the problem that answers more. */
public enum Limit {
    /** Request line and headers of a request together, in bytes. */
    HEAD_BYTES("head-too-large", Bounds.HEAD, 16 << 10, "bytes", "Send fewer or shorter headers."),

    /** Address of a request as it stands in the request line, in bytes; headers share its room. */
    ADDRESS_BYTES("address-too-long", Bounds.ADDRESS, 16 << 10, "bytes", "Ask for less at once."),

    /** Header lines of a request. */
    HEADERS("too-many-headers", Bounds.HEAD, 100, "headers", "Send fewer."),

    /** One header's content, in characters. */
    HEADER_LENGTH("header-too-long", Bounds.HEAD, 8_000, "characters", "Shorten it."),

    /** What stands behind the question mark of an address, as it is sent. */
    QUERY_LENGTH("query-too-long", Bounds.ADDRESS, 8_000, "characters", "Ask for less at once."),

    /** Parameters of a query. */
    QUERY_PARAMETERS("too-many-parameters", Bounds.QUERY, 40, "parameters", "Leave out what is not needed."),

    /** A name, a number or a word that is looked up or searched for in a query. */
    QUERY_TEXT("parameter-too-long", Bounds.QUERY, 1_000, "characters", "Shorten it."),

    /** JSON in a body, and one sheet's content in canonical JSON, in bytes. */
    JSON_BYTES("body-too-large", Bounds.BODY, 900_000, "bytes", "Split it into several sheets."),

    /** A form, in bytes. */
    FORM_BYTES("form-too-large", Bounds.BODY, 10_000, "bytes", "Send the form as it is on the page."),

    /** A MIDI file, in bytes. */
    MIDI_BYTES("midi-too-large", Bounds.BODY, 16 << 20, "bytes", "Is it a recording of sound? Send a shorter take."),

    /** A recording, in bytes, all its files together: forty minutes of six channels at 48 kHz and 24 bit. */
    RECORDING_BYTES(
            "recording-too-large", Bounds.BODY, 2L << 30, "bytes", "Send a shorter recording: a minute is enough."),

    /** An archive as it is sent, in bytes. */
    ARCHIVE_BYTES(
            "archive-too-large",
            Bounds.BODY,
            512L << 20,
            "bytes",
            "A notebook this large moves by backup and restore."),

    /** Objects and lists within one another. */
    JSON_DEPTH("nested-too-deep", Bounds.CONTENT, 40, "levels", "Nothing here needs more; look for a slip."),

    /** Fields, entries and values of one JSON text, counted as its tokens. */
    JSON_TOKENS("too-many-fields", Bounds.CONTENT, 200_000, "names and values", "Split it into several sheets."),

    /** The name of a field, in characters. */
    NAME_LENGTH("name-too-long", Bounds.CONTENT, 1_000, "characters", "Shorten it."),

    /** A number as it is written, in characters. */
    NUMBER_LENGTH("number-too-long", Bounds.CONTENT, 40, "characters", "Round it; 17 digits are enough."),

    /** Any text, in characters; most fields allow less. */
    TEXT_LENGTH("text-too-long", Bounds.CONTENT, 20_000, "characters", "Shorten it, or split it into several."),

    /** Entries of a map or list of a sheet or of what a bench is asked; most allow less. */
    ENTRIES("too-many-entries", Bounds.CONTENT, 1_000, "entries", "Leave some out, or make a second sheet."),

    /** Notes of one take: ten hours of steady sixteenths. */
    NOTES("too-many-notes", Bounds.CONTENT, 300_000, "notes", "Cut the take into shorter ones."),

    /** Bends of one take, over all channels. */
    BENDS("too-many-bends", Bounds.CONTENT, 2_000_000, "pitch bends", "Cut the take into shorter ones."),

    /** Ids of repairs to refuse, in the query. */
    REFUSED_REPAIRS("too-many-refused", Bounds.QUERY, 1_000, "ids", "Keep the take, and refuse them on its sheet."),

    /** Measures of sheet music. */
    MEASURES("too-many-measures", Bounds.CONTENT, 20_000, "measures", "Give a slower tempo, or a shorter take."),

    /** Files of one recording. */
    RECORDING_FILES(
            "too-many-files", Bounds.CONTENT, 24, "files", "Send one per input, or one per string and loudness."),

    /** Channels of one recording. */
    CHANNELS("too-many-channels", Bounds.CONTENT, 8, "channels", "Export one channel per string."),

    /** Samples a second. */
    SAMPLE_RATE("sample-rate-too-high", Bounds.CONTENT, 192_000, "samples a second", "Export it at 48 000."),

    /** How long a recording plays, in seconds. */
    RECORDING_SECONDS(
            "recording-too-long", Bounds.CONTENT, 4 * 3600, "seconds", "Send a shorter recording: a minute is enough."),

    /** Chunks before the samples of a WAV file. */
    WAV_CHUNKS("too-many-chunks", Bounds.CONTENT, 10_000, "chunks before the samples", "Export it again as plain WAV."),

    /** Strokes of one recording, found or given. */
    STROKES(
            "too-many-strokes",
            Bounds.CONTENT,
            1_000,
            "strokes",
            "Record each open string soft, medium and loud, a few times at most."),

    /** Files of an archive. */
    ARCHIVE_ENTRIES(
            "archive-too-many-entries",
            Bounds.CONTENT,
            500_000,
            "files in an archive",
            "A notebook this large moves by backup and restore."),

    /** One file of an archive, unpacked, in bytes; the files that takes name may have {@link #MIDI_BYTES}. */
    ARCHIVE_ENTRY_BYTES(
            "archive-entry-too-large", Bounds.CONTENT, 3_600_000, "bytes in one file", "Export the notebook again."),

    /** All files of an archive, unpacked, in bytes. */
    ARCHIVE_UNPACKED_BYTES(
            "archive-unpacks-too-much",
            Bounds.CONTENT,
            4L << 30,
            "bytes, unpacked",
            "A notebook this large moves by backup and restore."),

    /**
     * How long the body of a request may take to arrive, in seconds; and one more for each {@value #BYTES_A_SECOND} bytes
     * that have come.
     */
    SENDING_SECONDS("sending-took-too-long", Bounds.SENDING, 30, "seconds", "Send it again over a better connection."),

    /** How long nothing may come, in seconds. */
    SILENCE_SECONDS("nothing-came", Bounds.SENDING, 30, "seconds without a byte", "Send the request again."),

    /** How long a bench may compute for one request, in seconds. */
    COMPUTING_SECONDS("took-too-long", Bounds.BUSY, 60, "seconds of computing", "Send a shorter take or recording."),

    /** How long an import may take, in seconds; then nothing of it is kept. */
    IMPORT_SECONDS(
            "import-took-too-long", Bounds.BUSY, 1_800, "seconds of importing", "Import it with: rosinbook import."),

    /** How long a request waits for a bench, in seconds. */
    WAITING_SECONDS("benches-busy", Bounds.BUSY, 20, "seconds of waiting for a bench", "Try again in a minute."),

    /** Requests that bring a body, all at once. */
    BODIES_AT_ONCE("too-many-sending", Bounds.BUSY, 64, "requests with a body at once", "Try again in a moment."),

    /** Requests with a body that come from whoever has not signed in, all at once, where players sign in. */
    STRANGERS_AT_ONCE(
            "too-many-strangers",
            Bounds.BUSY,
            16,
            "requests with a body at once before signing in",
            "Try again in a moment."),

    /** Those of them that come from one address, or from one network of IPv6. */
    ONE_STRANGER_AT_ONCE(
            "too-many-from-one-address",
            Bounds.BUSY,
            8,
            "requests with a body at once from one address before signing in",
            "Try again in a moment."),

    /** Recordings that arrive at once. */
    UPLOADS_AT_ONCE("too-many-uploads", Bounds.BUSY, 3, "recordings at once", "Wait until another has arrived."),

    /** Archives that arrive at once; who sends slowly keeps only such a place. */
    ARCHIVES_ARRIVING_AT_ONCE(
            "too-many-archives", Bounds.BUSY, 8, "archives at once", "Wait until another has arrived."),

    /** Imports at once. */
    IMPORTS_AT_ONCE("import-under-way", Bounds.BUSY, 1, "import at once", "Wait until the other import is done."),

    /** Exports at once. */
    EXPORTS_AT_ONCE("export-under-way", Bounds.BUSY, 2, "exports at once", "Wait until another export is done."),

    /** Archives on their way at once, each a file as long as it takes; who reads slowly keeps only such a place. */
    ARCHIVES_SENT_AT_ONCE(
            "too-many-downloads", Bounds.BUSY, 16, "archives on their way at once", "Wait until another has arrived."),

    /** Open connections. Above it, those that wait longest for the rest of a request are closed for newcomers. */
    CONNECTIONS("connection-closed", Bounds.CONNECTION, 2_000, "connections", "Connect again.");

    /** How fast a body has to come in the long run. */
    public static final int BYTES_A_SECOND = 16_000;

    /** What a limit bounds, which decides how a refusal is answered. */
    public enum Bounds {
        /** Request line and headers. */
        HEAD,
        /** The address of a request. */
        ADDRESS,
        /** The parameters of a query. */
        QUERY,
        /** The bytes of a body. */
        BODY,
        /** What a body says. */
        CONTENT,
        /** The time in which a request arrives. */
        SENDING,
        /** Computing, or how much is done at once. */
        BUSY,
        /** Connections; nobody is left to be answered. */
        CONNECTION
    }

    private final String type;
    private final Bounds bounds;
    private final long most;
    private final String unit;
    private final String remedy;

    Limit(String type, Bounds bounds, long most, String unit, String remedy) {
        this.type = type;
        this.bounds = bounds;
        this.most = most;
        this.unit = unit;
        this.remedy = remedy;
    }

    /** The last part of the problem's type, as in {@code /problems/text-too-long}. */
    public String type() {
        return type;
    }

    /** What it bounds, which decides how a refusal is answered. */
    public Bounds bounds() {
        return bounds;
    }

    /** How much is still let in, in {@link #unit}. */
    public long most() {
        return most;
    }

    /** As {@link #most}, where it is known to be small. */
    public int count() {
        return Math.toIntExact(most);
    }

    /** What is counted, such as {@code bytes}. */
    public String unit() {
        return unit;
    }

    /** What to do, as a sentence. */
    public String remedy() {
        return remedy;
    }

    /** How much is let in, and what to do. */
    public String sentence() {
        return grouped(most) + " " + unit + (most == 1 ? " is the most. " : " are the most. ") + remedy;
    }

    /**
     * Lets a number of something pass.
     *
     * @throws PastLimit if it is more than {@link #most}
     */
    public void check(long given) {
        if (given > most) {
            throw new PastLimit(this, grouped(given) + " " + unit + ": " + grouped(most) + " is the most. " + remedy);
        }
    }

    private static String grouped(long number) {
        return String.format(Locale.ROOT, "%,d", number).replace(',', ' ');
    }
}
