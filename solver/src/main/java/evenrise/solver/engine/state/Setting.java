package evenrise.solver.engine.state;

/**
 * A start delay or a step that a board's type offers.
 *
 * @param index position in the type's list, sorted from short to long
 * @param seconds as the project states it
 * @param micros the same, rounded to the microsecond
 */
public record Setting(int index, double seconds, long micros) {
    static Setting of(int index, double seconds) {
        return new Setting(index, seconds, Math.round(seconds * 1e6));
    }
}
