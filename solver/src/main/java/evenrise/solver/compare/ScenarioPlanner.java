package evenrise.solver.compare;

import evenrise.model.plan.Plan;
import java.util.List;
import java.util.function.Supplier;

/** Plans what is sought, several side by side. */
public interface ScenarioPlanner {
    /**
     * One that is to be planned.
     *
     * @param name for messages
     * @param sought worked out when its turn has come
     */
    record Order(String name, Supplier<ScenarioSearch.Sought> sought) {}

    /** Takes a finished plan of the order with a number; never two at once. */
    interface Landing {
        void land(int number, Plan plan);
    }

    /** Runs to the end of all, or until {@link #stop}. */
    void run(List<Order> orders, Landing landing);

    /** Ends what runs soon; nothing lands any more. Any thread may call. */
    void stop();
}
