package evenrise.model.sizing;

import evenrise.model.plan.Review;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Supplier;

/**
 * Goes up the ladders of many places at once, one size a round, until each place has the first size that every criterion is
 * satisfied with. A round is one review of the whole plant.
 */
final class Climb {
    private final Part part;
    private final List<Criterion> criteria;
    private final Draft draft;
    private final Supplier<Review> review;

    /** Up to which size a place has come, and how each criterion stood at each. */
    private static final class Place {
        private final List<Size> ladder;
        private final List<List<Criterion.Verdict>> rounds = new ArrayList<>();
        private boolean isDone;

        Place(List<Size> ladder) {
            this.ladder = ladder;
        }

        Size current() {
            return ladder.get(rounds.size());
        }
    }

    /** @param review of the project with the draft in it */
    Climb(Part part, List<Criterion> criteria, Draft draft, Supplier<Review> review) {
        this.part = part;
        this.criteria = criteria;
        this.draft = draft;
        this.review = review;
    }

    /** Leaves what it found in the draft; where no size will do, what the project states. */
    List<Proposal> climb(
            Map<String, List<Size>> ladders, Map<String, Optional<Size>> stated, Map<String, String> labels) {
        Map<String, Place> places = new LinkedHashMap<>();
        ladders.forEach((id, ladder) -> places.put(id, new Place(ladder)));
        while (places.values().stream().anyMatch(each -> !each.isDone)) {
            Map<String, Size> chosen = new HashMap<>();
            places.forEach((id, place) -> {
                if (!place.isDone) {
                    chosen.put(id, place.current());
                }
            });
            draft.put(part, chosen);
            Review found = review.get();
            chosen.keySet().forEach(id -> judge(id, places.get(id), found));
        }
        List<Proposal> proposals = new ArrayList<>();
        places.forEach((id, place) -> proposals.add(
                proposal(id, labels.getOrDefault(id, id), place, stated.getOrDefault(id, Optional.empty()))));
        return proposals;
    }

    private void judge(String id, Place place, Review found) {
        List<Criterion.Verdict> verdicts =
                criteria.stream().map(criterion -> criterion.of(id, found)).toList();
        place.rounds.add(verdicts);
        boolean isEnough = verdicts.stream().allMatch(Criterion.Verdict::isKept);
        place.isDone = isEnough || place.rounds.size() == place.ladder.size();
        if (place.isDone && !isEnough) {
            draft.remove(part, id);
        }
    }

    private Proposal proposal(String id, String label, Place place, Optional<Size> stated) {
        int last = place.rounds.size() - 1;
        List<Answer> answers = new ArrayList<>();
        List<String> lacks = new ArrayList<>();
        for (int i = 0; i < criteria.size(); i++) {
            int which = i;
            List<Criterion.Verdict> verdicts =
                    place.rounds.stream().map(round -> round.get(which)).toList();
            Criterion.Verdict end = verdicts.get(last);
            if (verdicts.stream().noneMatch(Criterion.Verdict::isAsked)) {
                if (!end.isKept()) {
                    lacks.add("state " + criteria.get(i).needs());
                }
                continue;
            }
            int least = first(verdicts);
            if (!end.isKept()) {
                lacks.add("no standard size is enough by " + criteria.get(i).name() + ": " + end.text());
            }
            int below = least < 0 ? last : least - 1;
            answers.add(new Answer(
                    criteria.get(i).name(),
                    least < 0 ? Optional.empty() : Optional.of(place.ladder.get(least)),
                    end.isKept() ? end.text() : "",
                    below < 0 ? Optional.empty() : Optional.of(place.ladder.get(below)),
                    below < 0 ? "" : verdicts.get(below).text()));
        }
        return new Proposal(
                part,
                id,
                label,
                stated,
                lacks.isEmpty() ? Optional.of(place.ladder.get(last)) : Optional.empty(),
                answers,
                String.join("; ", lacks));
    }

    /** From which on it is kept up to the last that was tried; -1 where the last does not keep it. */
    private static int first(List<Criterion.Verdict> verdicts) {
        int first = verdicts.size();
        while (first > 0 && verdicts.get(first - 1).isKept()) {
            first--;
        }
        return first == verdicts.size() ? -1 : first;
    }
}
