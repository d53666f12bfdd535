import java.io.IOException;
import java.net.URI;
import java.nio.file.DirectoryStream;
import java.nio.file.FileSystems;
import java.nio.file.Files;
import java.nio.file.Path;

/**
 * Copies the classes of {@code java.lang.foreign} out of the runtime that this runs on, marked as of Java 17, so that the
 * compiler of a JDK 17 can read their signatures. Nothing runs from these copies. Argument: where they go.
 */
public final class Signatures {
    private static final int MAJOR_VERSION_AT = 7;
    private static final byte JAVA_17 = 61;

    public static void main(String[] words) throws IOException {
        Path from = FileSystems.getFileSystem(URI.create("jrt:/")).getPath("/modules/java.base/java/lang/foreign");
        Path to = Files.createDirectories(Path.of(words[0], "java/lang/foreign"));
        try (DirectoryStream<Path> classes = Files.newDirectoryStream(from)) {
            for (Path one : classes) {
                byte[] bytes = Files.readAllBytes(one);
                bytes[MAJOR_VERSION_AT] = JAVA_17;
                Files.write(to.resolve(one.getFileName().toString()), bytes);
            }
        }
    }
}
