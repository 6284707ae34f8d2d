package evenrise.solver.grid.ignite;

import java.util.List;

/** What the engine reaches into of Java; the packed jar's manifest says the same. */
public final class OpenedPackages {
    private static final List<String> NAMES = List.of(
            "java.io",
            "java.lang",
            "java.lang.invoke",
            "java.math",
            "java.net",
            "java.nio",
            "java.text",
            "java.time",
            "java.util",
            "java.util.concurrent",
            "java.util.concurrent.atomic",
            "java.util.concurrent.locks",
            "jdk.internal.access",
            "jdk.internal.misc",
            "sun.nio.ch");

    private OpenedPackages() {}

    /** For the command line of Java. */
    public static List<String> options() {
        return NAMES.stream()
                .map(name -> "--add-opens=java.base/" + name + "=ALL-UNNAMED")
                .toList();
    }
}
