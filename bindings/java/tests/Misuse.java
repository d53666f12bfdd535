import bismar.Bismar;
import bismar.BismarException;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;

/** Use and misuse of the class, two threads, and memory under bad calls. Argument: a folder with demo log and plan. */
public final class Misuse {
    private static final String EPLEY = "one_rm.epley_1985";
    private static int checked = 0;

    private static void check(boolean held, String what) {
        checked += 1;
        if (!held) {
            throw new AssertionError(what);
        }
    }

    private static void refused(String code, Runnable call) {
        try {
            call.run();
        } catch (BismarException refused) {
            check(refused.code.equals(code), refused.told + " instead of " + code);
            return;
        }
        throw new AssertionError("an answer instead of " + code);
    }

    private static long resident() throws IOException {
        return Long.parseLong(Files.readString(Path.of("/proc/self/statm")).split(" ")[1]) * 4096;
    }

    public static void main(String[] words) throws Exception {
        String log = Files.readString(Path.of(words[0], "demo-log.json"));
        String plan = Files.readString(Path.of(words[0], "demo-plan.json"));
        String asked = "{\"plan\":" + plan + ",\"today\":\"2026-08-27\"}";
        check(!Bismar.version().isEmpty(), "version");
        check(Bismar.keys().contains("\"answers.day\""), "keys");
        check(Bismar.call(EPLEY, "{\"load\":{\"kg\":100},\"reps\":15}").equals("{\"kg\":150}"), "150 kg, by hand");
        check(Bismar.flat(EPLEY, 100, 15) == 150, "150 kg, by hand");
        refused("unknown_function", () -> Bismar.call("nobody.knows", "{}"));
        refused("not_json", () -> Bismar.call(EPLEY, "{\"load\":"));
        refused("not_json", () -> Bismar.call(EPLEY, ""));
        refused("out_of_range", () -> Bismar.flat(EPLEY, 100, 300));
        refused("wrong_type", () -> Bismar.flat(EPLEY, 100));
        refused("not_finite", () -> Bismar.flat(EPLEY, Double.NaN, 5));

        double[] loads = new double[3000];
        double[] reps = new double[3000];
        for (int row = 0; row < loads.length; row += 1) {
            loads[row] = 20 + row % 1200 * 0.1;
            reps[row] = 1 + row % 20 * 0.5;
        }
        double[] found = Bismar.batch(EPLEY, loads, reps);
        for (int row = 0; row < loads.length; row += 1) {
            check(Double.doubleToRawLongBits(found[row])
                    == Double.doubleToRawLongBits(Bismar.flat(EPLEY, loads[row], reps[row])), "row " + row);
        }
        check(Bismar.batch(EPLEY, new double[0], new double[0]).length == 0, "no rows");
        loads[40] = -1;
        refused("load_out_of_domain", () -> Bismar.batch(EPLEY, loads, reps));

        Bismar.Progress closed = new Bismar.Progress(log);
        try (Bismar.Progress kept = new Bismar.Progress(log)) {
            String whole = Bismar.call("prescription.next_session",
                    "{\"log\":" + log + ",\"plan\":" + plan + ",\"today\":\"2026-08-27\"}");
            check(kept.ask("next_session", asked).equals(whole), "a kept state answers as the whole log");
            refused("needs_refold", () -> kept.apply(
                    "{\"sequence\":100001,\"day\":\"2025-01-01\",\"kind\":{\"body_mass_recorded\":{\"kg\":81}}}"));
            refused("unknown_variant", () -> kept.ask("nobody", "{}"));
            closed.close();
            closed.close();
            refused("not_ready", () -> closed.ask("state", "{}"));
            Thread[] threads = new Thread[2];
            int[] wrong = new int[2];
            for (int number = 0; number < 2; number += 1) {
                int own = number;
                threads[number] = new Thread(() -> {
                    for (int at = 0; at < 100; at += 1) {
                        wrong[own] += kept.ask("next_session", asked).equals(whole) ? 0 : 1;
                    }
                });
                threads[number].start();
            }
            for (Thread thread : threads) {
                thread.join();
            }
            check(wrong[0] + wrong[1] == 0, "two threads");
        }
        check(Bismar.openStates() == 0, "every state is given back");

        long before = 0;
        for (int at = 0; at < 60_000; at += 1) {
            // The runtime's own memory settles first.
            if (at == 50_000) {
                System.gc();
                before = resident();
            }
            int load = -1 - at;
            switch (at % 3) {
                case 0 -> refused("out_of_range", () -> Bismar.flat(EPLEY, load, 300));
                case 1 -> refused("missing_field", () -> new Bismar.Progress("{\"format\":\"bismar-log\",\"version\":99}"));
                default -> refused("not_ready", () -> closed.ask("state", "{}"));
            }
        }
        System.gc();
        long grown = resident() - before;
        System.out.println("java: memory after 10000 bad calls: " + grown + " B more");
        check(grown < 8_000_000, "flat memory");
        System.out.println("java: " + checked + " checks of use and misuse held");
    }
}
