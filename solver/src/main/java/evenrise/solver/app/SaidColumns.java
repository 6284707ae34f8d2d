package evenrise.solver.app;

import evenrise.model.contract.Harmless;
import evenrise.model.intake.RecorderColumns;
import evenrise.model.project.Phase;
import evenrise.solver.recording.RecordedColumn;
import java.util.HashMap;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * Which columns are what, as people say it.
 *
 * @since 0.1.0
 */
public final class SaidColumns {
    private SaidColumns() {}

    /**
     * @param headers by what they mean: {@code time}, {@code A}, {@code B}, {@code C}
     * @throws JobFailed where that is no meaning, or no time or no current is among them
     */
    public static RecorderColumns of(
            Map<String, String> headers, OptionalDouble unitsPerSecond, OptionalDouble ampsPerUnit) {
        Map<String, String> byMeaning = new HashMap<>();
        headers.forEach((meaning, header) -> byMeaning.put(known(meaning), header.strip()));
        if (!byMeaning.containsKey(RecordedColumn.TIME) || byMeaning.size() < 2 || byMeaning.containsValue("")) {
            throw new JobFailed(
                    JobFailed.Reason.REQUEST,
                    "say which column is the time and which is the current of one phase at least, as in 'time=Zeitpunkt'"
                            + " and 'A=Kanal 1'.");
        }
        try {
            return RecorderColumns.builder()
                    .time(byMeaning.get(RecordedColumn.TIME))
                    .phaseA(Optional.ofNullable(byMeaning.get(Phase.A.name())))
                    .phaseB(Optional.ofNullable(byMeaning.get(Phase.B.name())))
                    .phaseC(Optional.ofNullable(byMeaning.get(Phase.C.name())))
                    .unitsPerSecond(unitsPerSecond)
                    .ampsPerUnit(ampsPerUnit)
                    .build();
        } catch (IllegalArgumentException e) {
            throw new JobFailed(JobFailed.Reason.REQUEST, e.getMessage() + ".");
        }
    }

    private static String known(String meaning) {
        String plain = meaning.strip().toLowerCase(Locale.ROOT);
        if (plain.equals(RecordedColumn.TIME)) {
            return plain;
        }
        for (Phase each : Phase.values()) {
            if (plain.equals(each.name().toLowerCase(Locale.ROOT))) {
                return each.name();
            }
        }
        throw new JobFailed(
                JobFailed.Reason.REQUEST,
                "'" + Harmless.shown(meaning) + "' is nothing that a column can mean. Say time, A, B or C.");
    }
}
