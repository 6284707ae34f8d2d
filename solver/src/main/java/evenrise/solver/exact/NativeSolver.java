package evenrise.solver.exact;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;

/**
 * The solver's native library: loaded when first needed, and not there on every platform. The libraries lie in the jar;
 * they are unpacked once into a cache of the user's, and used from there afterwards.
 */
final class NativeSolver {
    /** Names a folder that holds the libraries already, such as a launcher's own. */
    static final String FOLDER_PROPERTY = "evenrise.natives";

    private static boolean isLoaded;

    private NativeSolver() {}

    /** @throws Unfit where this platform has none, or none of the folders can hold or run it */
    static synchronized void load() {
        if (!isLoaded) {
            load(NativeCache.folders());
            isLoaded = true;
        }
    }

    /** Tries one folder after the other: a full disk or one that runs no programs is no reason to do without. */
    private static void load(List<Path> folders) {
        List<String> reasons = new ArrayList<>();
        try {
            NativeFiles files = NativeFiles.ofThisPlatform();
            String given = System.getProperty(FOLDER_PROPERTY);
            if (given != null && loads(Path.of(given), files, reasons)) {
                return;
            }
            for (Path folder : folders) {
                NativeCache cache = new NativeCache(folder, files);
                cache.clean();
                if (cache.fill(reasons)
                        .filter(home -> loads(home, files, reasons))
                        .isPresent()) {
                    return;
                }
            }
        } catch (RuntimeException e) {
            reasons.add(String.valueOf(e.getMessage()));
        }
        throw new Unfit("the solver that proves bounds does not run here: " + String.join("; ", reasons));
    }

    private static boolean loads(Path home, NativeFiles files, List<String> reasons) {
        try {
            System.load(home.resolve(files.entryLibrary()).toAbsolutePath().toString());
            return true;
        } catch (LinkageError | RuntimeException e) {
            reasons.add("not from the folder '" + home + "', which lacks it or may run no programs");
            return false;
        }
    }
}
