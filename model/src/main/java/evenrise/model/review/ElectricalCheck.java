package evenrise.model.review;

import evenrise.model.project.PlantPart;
import evenrise.model.rules.Layout;
import java.util.Set;

/**
 * One question that an electrical engineer would ask of a plan. It gathers what the project and the layout say, asks
 * pure functions of {@code evenrise.model.electrical}, and puts the answer in words. It never fails, however broken the
 * plan is, and where data is missing it says so.
 */
public interface ElectricalCheck {
    /** Name in files, on screens and in docs/electrical.md, such as {@code voltage-drop}. */
    String id();

    /** Whether it holds anything against a limit; one that only computes figures is none of the checks that are counted. */
    default boolean judges() {
        return true;
    }

    /** Parts of a plant that it does not understand; where one is used, it is not made. */
    default Set<PlantPart> beyond() {
        return Set.of();
    }

    /** Adds what it has to say and what it has computed. */
    void review(Layout layout, Remarks findings);
}
