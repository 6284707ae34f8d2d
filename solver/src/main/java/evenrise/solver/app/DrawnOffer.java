package evenrise.solver.app;

import evenrise.model.contract.Phrase;
import evenrise.model.file.FileSet;
import evenrise.solver.report.Alternate;
import evenrise.solver.report.AlternateRows;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * Alternates side by side as they will be written, to be looked at first.
 *
 * @since 0.1.0
 */
public final class DrawnOffer {
    private static final int MOST_NAMED = 12;

    private final String title;
    private final List<Alternate> alternates;
    private final Map<String, byte[]> files;

    DrawnOffer(String title, List<Alternate> alternates, Map<String, byte[]> files) {
        this.title = title;
        this.alternates = List.copyOf(alternates);
        this.files = new LinkedHashMap<>(files);
    }

    /**
     * One figure of all alternates, in their order.
     *
     * @param label with the unit
     */
    public record OfferFigure(String label, List<OfferCell> cells) {}

    /**
     * @param value as it is read
     * @param difference to the first alternate, with its sign; empty where there is none to tell
     * @param note in small print; may be empty
     */
    public record OfferCell(String value, String difference, String note) {}

    /** Figures of all alternates, in the order of their worth to a client. */
    public List<OfferFigure> figures() {
        return AlternateRows.figures(alternates).stream()
                .map(row -> new OfferFigure(
                        row.label(),
                        row.cells().stream()
                                .map(cell -> new OfferCell(cell.value(), cell.difference(), cell.note()))
                                .toList()))
                .toList();
    }

    /** What all judges say of each plan, in the order of the alternates. */
    public List<String> headlines() {
        return alternates.stream().map(Alternate::headline).toList();
    }

    /** Whether the plans of all keep every rule and limit, of what was checked. */
    public boolean keepsAll() {
        return alternates.stream().allMatch(Alternate::keepsAll);
    }

    /** Names of its files: page, sheet and table. */
    public List<String> names() {
        return List.copyOf(files.keySet());
    }

    /** A file as it will be written; empty where none is called so. */
    public Optional<byte[]> file(String name) {
        return Optional.ofNullable(files.get(name)).map(byte[]::clone);
    }

    /**
     * Writes all of it, or nothing.
     *
     * @param folder made where there is none
     * @throws JobFailed where that would overwrite what somebody else has made
     */
    public OfferResult write(Path folder) {
        FileSet set = new FileSet(folder);
        files.forEach(set::add);
        Outputs.write(() -> {
            List<String> foreign = set.foreign(files.keySet());
            if (!foreign.isEmpty()) {
                throw new JobFailed(
                        JobFailed.Reason.OUTPUT,
                        "would overwrite what another program wrote or somebody has changed: "
                                + Phrase.quoted(foreign, MOST_NAMED) + ". Move it away, or name another folder.");
            }
            set.write();
        });
        return new OfferResult(title, alternates, names());
    }
}
