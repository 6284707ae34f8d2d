package evenrise.solver.cli;

import evenrise.solver.app.Source;
import evenrise.solver.app.TextStyle;
import java.io.BufferedOutputStream;
import java.io.FileDescriptor;
import java.io.FileOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.io.OutputStreamWriter;
import java.io.PrintWriter;
import java.nio.charset.Charset;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import picocli.CommandLine.Model.UsageMessageSpec;

/** What a command reads from and prints to. Data goes to {@link #data()}, reports to {@link #out()}, the rest to {@link #err()}. */
final class Terminal {
    /** Stands for a standard stream in place of a file. */
    static final String STREAM = "-";

    private static final int NARROWEST = 80;
    private static final int WIDEST = 240;

    private final InputStream in;
    private final WatchedOutput data;
    private final PrintWriter out;
    private final PrintWriter err;
    private final boolean outIsScreen;
    private final boolean errIsScreen;
    private final boolean mayColour;
    private final boolean isUnicode;

    /**
     * @param charset of the screen; data is UTF-8 whatever it is
     * @param mayColour whether colour is welcome where a stream is a screen
     */
    Terminal(
            InputStream in,
            OutputStream out,
            OutputStream err,
            Charset charset,
            boolean outIsScreen,
            boolean errIsScreen,
            boolean mayColour) {
        this.in = in;
        this.data = new WatchedOutput(out);
        this.out = new PrintWriter(new OutputStreamWriter(data, charset));
        this.err = new PrintWriter(new OutputStreamWriter(err, charset), true);
        this.outIsScreen = outIsScreen;
        this.errIsScreen = errIsScreen;
        this.mayColour = mayColour;
        this.isUnicode = charset.newEncoder().canEncode('\u2588');
    }

    /** The streams of this process. */
    static Terminal ofProcess() {
        return new Terminal(
                System.in,
                new BufferedOutputStream(new FileOutputStream(FileDescriptor.out)),
                new BufferedOutputStream(new FileOutputStream(FileDescriptor.err)),
                Charset.forName(System.getProperty("native.encoding", "UTF-8")),
                isScreen(1),
                isScreen(2),
                mayColour(System.getenv()));
    }

    /** Whether the user wants colour (no-color.org) and his terminal knows of it. */
    static boolean mayColour(Map<String, String> environment) {
        return environment.getOrDefault("NO_COLOR", "").isEmpty()
                && !environment.getOrDefault("TERM", "dumb").equals("dumb");
    }

    /** Whether a standard stream is a terminal; where the system does not tell, whether all of them are. */
    private static boolean isScreen(int descriptor) {
        try {
            String target = Files.readSymbolicLink(Path.of("/proc/self/fd/" + descriptor))
                    .toString();
            return target.startsWith("/dev/pts/") || target.startsWith("/dev/tty") || target.equals("/dev/console");
        } catch (IOException | UnsupportedOperationException e) {
            return System.console() != null;
        }
    }

    /** Standard output for bytes. */
    WatchedOutput data() {
        return data;
    }

    /** Standard output for text. */
    PrintWriter out() {
        return out;
    }

    /** Standard error. */
    PrintWriter err() {
        return err;
    }

    boolean errIsScreen() {
        return errIsScreen;
    }

    /** Whether standard error is a screen that knows how to move in its lines, with letters for bars. */
    boolean mayDrawErr() {
        return errIsScreen && mayColour && isUnicode;
    }

    boolean mayColourOut() {
        return outIsScreen && mayColour;
    }

    /** @param isFull whether long lists are shown in full */
    TextStyle outStyle(boolean isFull) {
        return outIsScreen ? new TextStyle(isFull, mayColourOut(), columns()) : new TextStyle(isFull, false);
    }

    /** As wide as the screen, within reason; the library asks the system, which takes a moment. */
    private static int columns() {
        int columns = new UsageMessageSpec().autoWidth(true).width();
        return Math.min(Math.max(columns, NARROWEST), WIDEST);
    }

    TextStyle errStyle() {
        return new TextStyle(false, errIsScreen && mayColour);
    }

    /** A file, or standard input. */
    Source source(String name) {
        return name.equals(STREAM) ? Source.stream(in, name) : Source.file(name);
    }

    void print(PrintWriter writer, List<String> lines) {
        lines.forEach(writer::println);
        writer.flush();
    }

    void flush() {
        out.flush();
        err.flush();
    }
}
