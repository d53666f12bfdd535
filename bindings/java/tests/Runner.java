import bismar.Bismar;
import bismar.BismarException;
import java.io.BufferedOutputStream;
import java.io.DataInputStream;
import java.io.EOFException;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;

/** Calls what it is asked to on its standard input, as {@code bindings/checks/spoken.py} says. */
public final class Runner {
    public static void main(String[] words) throws IOException {
        DataInputStream in = new DataInputStream(new java.io.BufferedInputStream(System.in));
        OutputStream out = new BufferedOutputStream(System.out);
        while (true) {
            String key;
            try {
                key = text(in);
            } catch (EOFException end) {
                return;
            }
            String given = text(in);
            try {
                put(out, 0, key.equals("keys") ? Bismar.keys() : Bismar.call(key, given));
            } catch (BismarException refused) {
                put(out, 1, refused.told);
            }
            out.flush();
        }
    }

    private static String text(DataInputStream in) throws IOException {
        byte[] bytes = in.readNBytes(number(in));
        return new String(bytes, StandardCharsets.UTF_8);
    }

    private static int number(DataInputStream in) throws IOException {
        return Integer.reverseBytes(in.readInt());
    }

    private static void put(OutputStream out, int status, String text) throws IOException {
        byte[] bytes = text.getBytes(StandardCharsets.UTF_8);
        for (int number : new int[] {status, bytes.length}) {
            out.write(new byte[] {(byte) number, (byte) (number >> 8), (byte) (number >> 16), (byte) (number >> 24)});
        }
        out.write(bytes);
    }
}
