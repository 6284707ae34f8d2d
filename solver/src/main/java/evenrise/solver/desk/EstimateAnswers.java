package evenrise.solver.desk;

import evenrise.solver.app.DrawnOffer.OfferFigure;
import evenrise.solver.app.EstimateState;
import java.util.List;
import java.util.Optional;

/** What windows are told of an estimate and of an offer. */
public final class EstimateAnswers {
    private EstimateAnswers() {}

    /**
     * How an estimate goes on.
     *
     * @param state none, running, done, stopped or failed
     * @param words what it does, or why it failed
     * @param done make-ups that were planned in this part of the work, of those that may be
     * @param isOfNow whether the project on the desk is the one that it began with
     * @param folder that its files are in
     * @param notes what is to be known of the inputs
     * @param known empty before the first make-up is listed
     */
    public record EstimateView(
            String state,
            String words,
            double elapsedSeconds,
            int done,
            int of,
            boolean isOfNow,
            String folder,
            List<String> notes,
            Optional<KnownView> known) {}

    /**
     * What is known.
     *
     * @param listed how many make-ups are in the list by price; of those that nobody has looked at only the first are told
     */
    public record KnownView(int listed, EstimateState estimate) {}

    /**
     * A make-up's plan with the room that it leaves.
     *
     * @param rooms free slots, and how much one more load of one pole may draw there
     */
    public record MakeUpView(
            String files,
            DeskAnswers.PlanSheet plan,
            List<SupposedAnswers.RoomView> rooms,
            List<PanelSpare> panels,
            List<BoardSpare> boards) {}

    /**
     * What a panel has to spare.
     *
     * @param askedSlots that the make-up leaves at least
     * @param askedPercent of the running current, alike
     */
    public record PanelSpare(String panel, int freeSlots, int askedSlots, double askedPercent) {}

    /** What a board has to spare; nothing is asked of one that switches nothing. */
    public record BoardSpare(String board, String type, String panel, int outputs, int used, int askedOutputs) {}

    /**
     * Alternates as they were drawn.
     *
     * @param files page, sheet and table, below the path of the drawn offer
     */
    public record OfferView(
            int drawn,
            List<String> files,
            List<String> names,
            List<OfferFigure> figures,
            List<String> headlines,
            boolean keepsAll) {}

    public record OfferWritten(String folder, List<String> files) {}

    /** @param files .csv and .xlsx */
    public record PriceTablesView(List<String> files) {}
}
