package evenrise.solver.app;

import evenrise.model.plan.Assessment;
import evenrise.solver.report.Alternate;
import evenrise.solver.report.AlternateText;
import java.math.BigDecimal;
import java.util.List;
import java.util.Optional;

/**
 * Alternates that were offered, and the files about them.
 *
 * @since 0.1.0
 */
public final class OfferResult implements Listing {
    private final String title;
    private final List<Alternate> alternates;
    private final List<String> written;

    OfferResult(String title, List<Alternate> alternates, List<String> written) {
        this.title = title;
        this.alternates = List.copyOf(alternates);
        this.written = List.copyOf(written);
    }

    /** Names of files in the folder. */
    public List<String> written() {
        return written;
    }

    /** Of one alternate, percentages included; empty where nothing of it has a price. */
    public Optional<BigDecimal> price(String name) {
        return alternates.stream()
                .filter(each -> each.name().equals(name))
                .findFirst()
                .flatMap(Alternate::price);
    }

    /** What all judges say of each plan, in the order of the alternates. */
    public List<Assessment> assessments() {
        return alternates.stream().map(Alternate::assessment).toList();
    }

    @Override
    public List<String> text(TextStyle style) {
        return AlternateText.lines(title, alternates, style.paint());
    }
}
