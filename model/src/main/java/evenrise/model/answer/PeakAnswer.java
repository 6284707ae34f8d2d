package evenrise.model.answer;

import evenrise.model.rules.PeakShare;
import java.util.List;
import java.util.Optional;

/**
 * What makes a plan's peak, and which single changes would lower it.
 *
 * @param parts of the supply's peak, the largest first
 * @param remaining how many loads more have a part in it
 */
public record PeakAnswer(List<Part> parts, int remaining) {
    /**
     * One load's part.
     *
     * @param lowest the change of this load that lowers the peak most and breaks nothing; empty where none lowers it
     */
    public record Part(PeakShare share, Optional<Alternative> lowest) {}

    public PeakAnswer {
        parts = List.copyOf(parts);
    }
}
