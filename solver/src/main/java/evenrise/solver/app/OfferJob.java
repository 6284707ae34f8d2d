package evenrise.solver.app;

import evenrise.model.project.Project;
import evenrise.model.project.QuantityRange;
import evenrise.solver.compare.PriceRange;
import evenrise.solver.compare.QuantityPrices;
import evenrise.solver.rendering.OfferPage;
import evenrise.solver.report.Alternate;
import evenrise.solver.report.AlternateRows;
import evenrise.solver.report.AlternateText;
import evenrise.solver.table.Csv;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** Alternates from request to files that are not written yet. */
final class OfferJob {
    private static final long SEED = 1;

    private OfferJob() {}

    static DrawnOffer drawn(OfferRequest request, Watch watch) {
        List<Alternate> alternates = new ArrayList<>();
        for (OfferRequest.Named each : request.alternates()) {
            AuditJob.Subject subject = AuditJob.Subject.of(each.project(), each.plan(), watch.notes())
                    .with(project -> SharedPrices.on(project, request.catalogue(), watch.notes()));
            alternates.add(Alternate.of(
                    each.name(), subject.evaluation(Optional.empty()), range(subject.project(), request.draws())));
        }
        watch.at(Stage.WRITING);
        Map<String, byte[]> files = new LinkedHashMap<>();
        files.put("offer.html", utf8(OfferPage.html(request.title(), alternates)));
        files.put("offer.pdf", OfferPage.pdf(request.title(), alternates));
        files.put(
                "offer.csv",
                utf8(Csv.of(
                        AlternateRows.values(alternates),
                        AlternateText.bases(alternates).keySet())));
        return new DrawnOffer(request.title(), alternates, files);
    }

    /** By the usual seed: the same offer is the same page. */
    private static Optional<PriceRange> range(Project project, int draws) {
        boolean isOpen = project.quantities().stream().anyMatch(QuantityRange::stated);
        return draws == 0 || !isOpen || project.catalogue().isEmpty()
                ? Optional.empty()
                : Optional.of(QuantityPrices.ofOwnMakeUp(project, () -> false).drawn(draws, SEED));
    }

    private static byte[] utf8(String text) {
        return text.getBytes(StandardCharsets.UTF_8);
    }
}
