package bismar;

import java.lang.foreign.Arena;
import java.lang.foreign.FunctionDescriptor;
import java.lang.foreign.Linker;
import java.lang.foreign.MemoryLayout;
import java.lang.foreign.MemorySegment;
import java.lang.foreign.SymbolLookup;
import java.lang.foreign.ValueLayout;
import java.lang.invoke.MethodHandle;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;

/**
 * The library through its C interface. Objects are JSON texts with the names of the log's JSON; every thread may call.
 *
 * <p>The library's file is named by the system property {@code bismar.library}. Memory of a call lives as long as the call;
 * bytes of the library are given back before it returns.
 */
public final class Bismar {
    private Bismar() {}

    /** The bytes that the library gives: a pointer and a length. */
    private static final MemoryLayout BYTES = MemoryLayout.structLayout(ValueLayout.ADDRESS, ValueLayout.JAVA_LONG);

    /** A column of a batch: a pointer to its rows, or null and the number of every row. */
    private static final MemoryLayout COLUMN = MemoryLayout.structLayout(ValueLayout.ADDRESS, ValueLayout.JAVA_DOUBLE);

    private static final ValueLayout POINTER = ValueLayout.ADDRESS;
    private static final ValueLayout LENGTH = ValueLayout.JAVA_LONG;
    private static final ValueLayout STATUS = ValueLayout.JAVA_INT;

    private static final SymbolLookup LIBRARY = library();
    private static final MethodHandle VERSION = function("bismar_version", POINTER);
    private static final MethodHandle KEYS = function("bismar_keys", STATUS, POINTER);
    private static final MethodHandle CALL =
            function("bismar_call", STATUS, POINTER, LENGTH, POINTER, LENGTH, POINTER);
    private static final MethodHandle FLAT =
            function("bismar_flat", STATUS, POINTER, LENGTH, POINTER, LENGTH, POINTER, POINTER);
    private static final MethodHandle BATCH =
            function("bismar_batch", STATUS, POINTER, LENGTH, POINTER, LENGTH, POINTER, LENGTH, POINTER, POINTER);
    private static final MethodHandle OPEN = function("bismar_open", STATUS, POINTER, LENGTH, POINTER, POINTER);
    private static final MethodHandle APPLY =
            function("bismar_apply", STATUS, ValueLayout.JAVA_LONG, POINTER, LENGTH, POINTER);
    private static final MethodHandle ASK =
            function("bismar_ask", STATUS, ValueLayout.JAVA_LONG, POINTER, LENGTH, POINTER, LENGTH, POINTER);
    private static final MethodHandle CLOSE = function("bismar_close", STATUS, ValueLayout.JAVA_LONG);
    private static final MethodHandle OPEN_STATES = function("bismar_open_states", LENGTH);
    private static final MethodHandle FREE =
            Linker.nativeLinker().downcallHandle(symbol("bismar_free"), FunctionDescriptor.ofVoid(POINTER));

    private static final int ANSWERED = 0;
    private static final int REFUSED = 1;

    private static SymbolLookup library() {
        String file = System.getProperty("bismar.library");
        if (file == null) {
            throw new IllegalStateException("the system property bismar.library names the library's file");
        }
        return SymbolLookup.libraryLookup(Path.of(file), Arena.global());
    }

    private static MemorySegment symbol(String name) {
        return LIBRARY.find(name).orElseThrow(() -> new IllegalStateException("no " + name + " in the library"));
    }

    private static MethodHandle function(String name, ValueLayout answer, MemoryLayout... given) {
        return Linker.nativeLinker().downcallHandle(symbol(name), FunctionDescriptor.of(answer, given));
    }

    /** A call whose bytes are the answer or the error. */
    private interface Told {
        int into(MemorySegment bytes) throws Throwable;
    }

    /** A text as bytes and their number. */
    private record Text(MemorySegment bytes, long length) {
        static Text of(Arena arena, String text) {
            byte[] bytes = text.getBytes(StandardCharsets.UTF_8);
            MemorySegment segment = arena.allocate(Math.max(bytes.length, 1));
            MemorySegment.copy(bytes, 0, segment, ValueLayout.JAVA_BYTE, 0, bytes.length);
            return new Text(segment, bytes.length);
        }
    }

    /** Calls; the answer's text, or null where there is none. */
    private static String told(Arena arena, Told call) {
        MemorySegment bytes = arena.allocate(BYTES);
        try {
            int status = call.into(bytes);
            String text = text(bytes);
            FREE.invoke(bytes);
            if (status == ANSWERED) {
                return text;
            }
            if (status == REFUSED) {
                throw new BismarException(text);
            }
            throw new IllegalStateException("the library failed with status " + status);
        } catch (RuntimeException | Error thrown) {
            throw thrown;
        } catch (Throwable thrown) {
            throw new IllegalStateException(thrown);
        }
    }

    private static String text(MemorySegment bytes) {
        MemorySegment data = bytes.get(ValueLayout.ADDRESS, 0);
        if (data.equals(MemorySegment.NULL)) {
            return null;
        }
        long length = bytes.get(ValueLayout.JAVA_LONG, ValueLayout.ADDRESS.byteSize());
        return new String(data.reinterpret(length).toArray(ValueLayout.JAVA_BYTE), StandardCharsets.UTF_8);
    }

    /** The version of the library. */
    public static String version() {
        try {
            return ((MemorySegment) VERSION.invoke()).reinterpret(Long.MAX_VALUE).getString(0);
        } catch (Throwable thrown) {
            throw new IllegalStateException(thrown);
        }
    }

    /** Every key that {@link #call} knows, as a JSON list. */
    public static String keys() {
        try (Arena arena = Arena.ofConfined()) {
            return told(arena, bytes -> (int) KEYS.invoke(bytes));
        }
    }

    /** Calls a function by its key; {@code given} is a JSON object of its arguments. */
    public static String call(String key, String given) {
        try (Arena arena = Arena.ofConfined()) {
            Text name = Text.of(arena, key);
            Text object = Text.of(arena, given);
            return told(arena, bytes ->
                    (int) CALL.invoke(name.bytes(), name.length(), object.bytes(), object.length(), bytes));
        }
    }

    /** Calls a function of numbers: masses in kg, lengths in mm, days in days from 1970-01-01. */
    public static double flat(String key, double... given) {
        try (Arena arena = Arena.ofConfined()) {
            Text name = Text.of(arena, key);
            MemorySegment numbers = arena.allocateFrom(ValueLayout.JAVA_DOUBLE, given);
            MemorySegment answer = arena.allocate(ValueLayout.JAVA_DOUBLE);
            told(arena, bytes ->
                    (int) FLAT.invoke(name.bytes(), name.length(), numbers, (long) given.length, answer, bytes));
            return answer.get(ValueLayout.JAVA_DOUBLE, 0);
        }
    }

    /** Calls a function of numbers for every row of the columns; the first row that is refused is the error. */
    public static double[] batch(String key, double[]... columns) {
        long rows = columns.length == 0 ? 0 : columns[0].length;
        try (Arena arena = Arena.ofConfined()) {
            Text name = Text.of(arena, key);
            MemorySegment list = arena.allocate(COLUMN, Math.max(columns.length, 1));
            for (int at = 0; at < columns.length; at += 1) {
                if (columns[at].length != rows) {
                    throw new IllegalArgumentException("columns of one length");
                }
                list.set(ValueLayout.ADDRESS, at * COLUMN.byteSize(), numbers(arena, columns[at]));
            }
            MemorySegment out = arena.allocate(ValueLayout.JAVA_DOUBLE, Math.max(rows, 1));
            told(arena, bytes -> (int) BATCH.invoke(
                    name.bytes(), name.length(), list, (long) columns.length, out, rows, MemorySegment.NULL, bytes));
            return out.asSlice(0, rows * Double.BYTES).toArray(ValueLayout.JAVA_DOUBLE);
        }
    }

    private static MemorySegment numbers(Arena arena, double[] column) {
        // A column without rows is there all the same: null would mean one number for every row.
        return column.length == 0
                ? arena.allocate(ValueLayout.JAVA_DOUBLE)
                : arena.allocateFrom(ValueLayout.JAVA_DOUBLE, column);
    }

    /** How many states are open. */
    public static long openStates() {
        try {
            return (long) OPEN_STATES.invoke();
        } catch (Throwable thrown) {
            throw new IllegalStateException(thrown);
        }
    }

    /** A folded log that is kept, so that only what is new has to be given. */
    public static final class Progress implements AutoCloseable {
        private final long state;

        /** Folds the log, a JSON text. */
        public Progress(String log) {
            try (Arena arena = Arena.ofConfined()) {
                Text given = Text.of(arena, "{\"log\":" + log + "}");
                MemorySegment number = arena.allocate(ValueLayout.JAVA_LONG);
                told(arena, bytes -> (int) OPEN.invoke(given.bytes(), given.length(), number, bytes));
                state = number.get(ValueLayout.JAVA_LONG, 0);
            }
        }

        /** Tells one more event, a JSON text. */
        public void apply(String event) {
            try (Arena arena = Arena.ofConfined()) {
                Text given = Text.of(arena, event);
                told(arena, bytes -> (int) APPLY.invoke(state, given.bytes(), given.length(), bytes));
            }
        }

        /** Asks {@code decide}, {@code next_session} or {@code state}. */
        public String ask(String question, String given) {
            try (Arena arena = Arena.ofConfined()) {
                Text name = Text.of(arena, question);
                Text object = Text.of(arena, given);
                return told(arena, bytes -> (int)
                        ASK.invoke(state, name.bytes(), name.length(), object.bytes(), object.length(), bytes));
            }
        }

        /** Gives the state back; closing twice does no harm. */
        @Override
        public void close() {
            try {
                int had = (int) CLOSE.invoke(state);
            } catch (Throwable thrown) {
                throw new IllegalStateException(thrown);
            }
        }
    }
}
