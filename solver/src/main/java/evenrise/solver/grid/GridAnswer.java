package evenrise.solver.grid;

/** What came of a job. */
public sealed interface GridAnswer {
    /** It is done. */
    record Done(byte[] output) implements GridAnswer {}

    /** It cannot be done, or was not; tried again when the same is run again. */
    record Failed(Cause cause, String words) implements GridAnswer {}

    /** Whatever the work throws becomes an answer. */
    static GridAnswer of(GridWork work, byte[] input, StopSignal stop) {
        try {
            return new Done(work.output(input, stop));
        } catch (GridWork.InvalidInput e) {
            return new Failed(Cause.INVALID, e.getMessage());
        } catch (OutOfMemoryError e) {
            return new Failed(Cause.OUT_OF_MEMORY, String.valueOf(e.getMessage()));
        } catch (RuntimeException | Error e) {
            return new Failed(Cause.THROWN, e.toString());
        }
    }

    /** Why not. */
    enum Cause {
        /** The input is none that can be worked on. */
        INVALID("its input is wrong"),
        /** It needs more memory than a worker has. */
        OUT_OF_MEMORY("out of memory"),
        /** An unexpected failure. */
        THROWN("unexpected failure"),
        /** The workers that took it are gone. */
        WORKER_LOST("its workers were lost");

        private final String words;

        Cause(String words) {
            this.words = words;
        }

        public String words() {
            return words;
        }
    }
}
