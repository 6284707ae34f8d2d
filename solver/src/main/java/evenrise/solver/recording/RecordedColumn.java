package evenrise.solver.recording;

/**
 * A column of a recorded table.
 *
 * @param example what stands in it first
 * @param means time, or a phase; empty where it is not read
 */
public record RecordedColumn(String header, String example, String means) {
    /** What a column of times means; one of currents means its phase. */
    public static final String TIME = "time";
}
