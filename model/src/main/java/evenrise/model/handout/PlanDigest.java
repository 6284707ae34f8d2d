package evenrise.model.handout;

import evenrise.model.plan.Assignment;
import evenrise.model.plan.BoardSetting;
import evenrise.model.plan.Plan;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.Comparator;
import java.util.HexFormat;
import java.util.List;

/**
 * The digest of what a plan places and sets. Figures, findings, layout of the file and order of its entries do not count: a
 * plan that is audited or written anew keeps it.
 */
public final class PlanDigest {
    private PlanDigest() {}

    /** In hexadecimal digits. */
    public static String sha256(Plan plan) {
        List<Object> places = plan.assignments().stream()
                .sorted(Comparator.comparing(Assignment::load))
                .map(each -> RecordLists.of(each.with().phases(List.of()).build()))
                .toList();
        List<Object> settings = plan.boards().stream()
                .sorted(Comparator.comparing(BoardSetting::id))
                .map(RecordLists::of)
                .toList();
        String text = PlainJson.text(List.of(places, settings));
        try {
            return HexFormat.of()
                    .formatHex(MessageDigest.getInstance("SHA-256").digest(text.getBytes(StandardCharsets.UTF_8)));
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException("every Java has SHA-256", e);
        }
    }
}
