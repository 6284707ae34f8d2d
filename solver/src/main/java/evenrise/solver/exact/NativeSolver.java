package evenrise.solver.exact;

import com.google.ortools.Loader;

/** The solver's native library: loaded when first needed, and not there on every platform. */
final class NativeSolver {
    private static boolean isLoaded;

    private NativeSolver() {}

    /** @throws Unfit where this platform has none */
    static synchronized void load() {
        if (!isLoaded) {
            try {
                Loader.loadNativeLibraries();
                isLoaded = true;
            } catch (RuntimeException | LinkageError e) {
                throw new Unfit("the solver that proves bounds does not run on this platform: " + e.getMessage());
            }
        }
    }
}
