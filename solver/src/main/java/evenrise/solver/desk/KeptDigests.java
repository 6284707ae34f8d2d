package evenrise.solver.desk;

import evenrise.model.handout.PlanDigest;
import evenrise.solver.app.JobFailed;
import java.util.Optional;

/** Kept plans by what they place and set: moves that come back say of which plan they are. */
record KeptDigests(Branches branches) {
    /** The plan that a page was made of, where it is kept. */
    Optional<String> named(String sha256, JudgedState now) {
        return branches.names().stream()
                .filter(name -> digest(name, now).filter(sha256::equals).isPresent())
                .findFirst();
    }

    private Optional<String> digest(String name, JudgedState now) {
        try {
            return Optional.of(PlanDigest.sha256(branches.plan(name, now)));
        } catch (JobFailed noPlanOfThisProject) {
            return Optional.empty();
        }
    }

    /** Keeps the plan on the desk under that name, or that name and a number where another plan has it. */
    String keep(String wanted, JudgedState now) {
        String sha256 = PlanDigest.sha256(now.layout().plan());
        String name = wanted;
        for (int next = 2; branches.names().contains(name); next++) {
            if (digest(name, now).filter(sha256::equals).isPresent()) {
                return name;
            }
            name = wanted + " " + next;
        }
        branches.keep(name, now);
        return name;
    }
}
