package evenrise.solver.app;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;

/** The version of this program, whatever class path it runs from: the build writes it beside this class. */
final class ProgramVersion {
    private static final String FILE = "version.txt";
    private static final String VERSION = read();

    private ProgramVersion() {}

    static String ofThisProgram() {
        return VERSION;
    }

    /** Where no build has filled the file in, a word says so. */
    private static String read() {
        try (InputStream in = ProgramVersion.class.getResourceAsStream(FILE)) {
            String text = new String(in.readAllBytes(), StandardCharsets.UTF_8).strip();
            return text.startsWith("$") ? "unpackaged" : text;
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
