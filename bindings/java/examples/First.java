import bismar.Bismar;
import bismar.BismarException;
import java.nio.file.Files;
import java.nio.file.Path;

/** A formula, a refusal, and today's session of a kept log. Arguments: a log, a plan, a day. */
public final class First {
    public static void main(String[] words) throws Exception {
        System.out.println(Bismar.call("one_rm.epley_1985", "{\"load\":{\"kg\":100},\"reps\":15}")); // {"kg":150}
        try {
            Bismar.call("one_rm.epley_1985", "{\"load\":{\"kg\":100},\"reps\":300}");
        } catch (BismarException refused) {
            System.out.println(refused.code); // out_of_range
        }
        String plan = Files.readString(Path.of(words[1]));
        try (var progress = new Bismar.Progress(Files.readString(Path.of(words[0])))) {
            System.out.println(progress.ask("next_session", "{\"plan\":" + plan + ",\"today\":\"" + words[2] + "\"}"));
        }
    }
}
