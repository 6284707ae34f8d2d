package evenrise.solver.grid;

/**
 * Work for one slot.
 *
 * @param key SHA-256 of all that decides what comes out, in hexadecimal: two jobs of one key are one
 * @param name what people call it
 */
public record GridJob(String key, String name, byte[] input) {
    private static final String HEXADECIMAL = "[0-9a-f]{64}";

    public GridJob {
        if (!key.matches(HEXADECIMAL)) {
            throw new IllegalArgumentException("key is '" + key + "', expected a SHA-256 in hexadecimal");
        }
    }
}
