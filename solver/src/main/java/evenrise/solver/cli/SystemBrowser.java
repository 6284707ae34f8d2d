package evenrise.solver.cli;

import java.io.IOException;
import java.util.List;
import java.util.Locale;

/** Asks the system to open an address in the user's browser. */
final class SystemBrowser {
    private SystemBrowser() {}

    /** @return whether the system has a program for that, which is not to say that a window came up */
    static boolean opens(String address) {
        try {
            new ProcessBuilder(command(System.getProperty("os.name", ""), address))
                    .redirectOutput(ProcessBuilder.Redirect.DISCARD)
                    .redirectError(ProcessBuilder.Redirect.DISCARD)
                    .start();
            return true;
        } catch (IOException e) {
            return false;
        }
    }

    static List<String> command(String system, String address) {
        String name = system.toLowerCase(Locale.ROOT);
        if (name.startsWith("mac")) {
            return List.of("open", address);
        }
        return name.startsWith("windows")
                ? List.of("rundll32", "url.dll,FileProtocolHandler", address)
                : List.of("xdg-open", address);
    }
}
