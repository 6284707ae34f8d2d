package evenrise.solver.desk;

import evenrise.model.contract.Harmless;
import evenrise.solver.app.DrawnOffer;
import evenrise.solver.app.JobFailed;
import evenrise.solver.app.Jobs;
import evenrise.solver.app.OfferRequest;
import evenrise.solver.app.Source;
import evenrise.solver.desk.EstimateAnswers.OfferView;
import evenrise.solver.desk.EstimateAnswers.OfferWritten;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayDeque;
import java.util.Deque;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Alternates for a client: drawn and looked at, then written as they were seen. */
final class OfferWork implements DeskPart {
    private static final String PIECES = "/offered/";
    private static final int MOST_KEPT = 3;
    private static final Pattern PIECE = Pattern.compile("([0-9]{1,9})/(offer[.](?:html|pdf|csv))");
    /** The page's own policy, which stands in it, says which style; nothing of it can do anything. */
    private static final String POLICY =
            "default-src 'none'; img-src data:; style-src 'unsafe-inline'; base-uri 'none';"
                    + " form-action 'none'; sandbox; frame-ancestors 'self'";

    private static final Map<String, String> TYPES = Map.of(
            "html", "text/html; charset=utf-8",
            "pdf", "application/pdf",
            "csv", "text/plain; charset=utf-8");

    private final Desk desk;
    private final DeskFiles files;
    private final EstimateFolder folder;
    private final Jobs jobs;
    /** The last first. */
    private final Deque<Numbered> kept = new ArrayDeque<>();

    private int drawn;

    private record Numbered(int number, DrawnOffer offer) {}

    OfferWork(Desk desk, DeskFiles files, Jobs jobs) {
        this.desk = desk;
        this.files = files;
        this.folder = new EstimateFolder(files);
        this.jobs = jobs;
    }

    @Override
    public void offer(DeskRoutes routes) {
        routes.asked(
                "/api/offer/draw",
                "Alternates are drawn side by side as a client will see them; nothing is written",
                EstimateRequests.DrawOffer.class,
                OfferView.class,
                this::draw);
        routes.asked(
                "/api/offer/write",
                "A drawn offer is written into a folder beside the project's file: page, sheet and table",
                EstimateRequests.WriteOffer.class,
                OfferWritten.class,
                this::write);
        routes.pieces(PIECES, this::piece);
    }

    private OfferView draw(EstimateRequests.DrawOffer asked) {
        DrawnOffer offer = jobs.drawOffer(request(asked));
        int number = keep(offer);
        return new OfferView(
                number,
                offer.names(),
                asked.alternates().stream()
                        .map(EstimateRequests.Alternative::name)
                        .toList(),
                offer.figures(),
                offer.headlines(),
                offer.keepsAll());
    }

    private OfferRequest request(EstimateRequests.DrawOffer asked) {
        try {
            return new OfferRequest(
                    asked.title().isBlank() ? "Alternates" : asked.title(),
                    asked.alternates().stream().map(this::named).toList(),
                    Optional.empty(),
                    asked.draws(),
                    files.folder());
        } catch (IllegalArgumentException e) {
            throw new JobFailed(JobFailed.Reason.REQUEST, "the alternates: " + e.getMessage() + ".");
        }
    }

    private OfferRequest.Named named(EstimateRequests.Alternative asked) {
        DeskState state = asked.files().isEmpty() ? desk.judged().state() : folder.state(asked.files());
        return new OfferRequest.Named(asked.name(), Source.of(state.project()), Source.of(state.plan()));
    }

    private synchronized int keep(DrawnOffer offer) {
        kept.addFirst(new Numbered(++drawn, offer));
        if (kept.size() > MOST_KEPT) {
            kept.removeLast();
        }
        return drawn;
    }

    private OfferWritten write(EstimateRequests.WriteOffer asked) {
        DrawnOffer offer = numbered(asked.drawn())
                .orElseThrow(() -> refused("this offer was drawn anew meanwhile. Look at it again."));
        Path target = files.folder().resolve(Branches.named(asked.folder()));
        if (Files.isSymbolicLink(target)) {
            throw refused("'" + Harmless.shown(asked.folder()) + "' leads to another place. Name another folder.");
        }
        offer.write(target);
        return new OfferWritten(asked.folder(), offer.names());
    }

    private synchronized Optional<DrawnOffer> numbered(int number) {
        return kept.stream().filter(each -> each.number() == number).findFirst().map(Numbered::offer);
    }

    /** The page is framed as if it came from elsewhere, without a right to anything. */
    private Optional<DeskFace.Piece> piece(String path) {
        Matcher asked = PIECE.matcher(path);
        if (!asked.matches()) {
            return Optional.empty();
        }
        String name = asked.group(2);
        String ending = name.substring(name.lastIndexOf('.') + 1);
        return numbered(Integer.parseInt(asked.group(1)))
                .flatMap(offer -> offer.file(name))
                .map(bytes -> new DeskFace.Piece(
                        TYPES.get(ending), bytes, ending.equals("html") ? Optional.of(POLICY) : Optional.empty()));
    }

    private static JobFailed refused(String why) {
        return new JobFailed(JobFailed.Reason.REQUEST, why);
    }
}
