package evenrise.model.project;

/** How a cable is laid, after IEC 60364-5-52 table A.52.3. */
public enum ReferenceMethod {
    /** Insulated conductors in conduit in a thermally insulating wall. */
    A1,
    /** Multi-core cable in conduit in a thermally insulating wall. */
    A2,
    /** Insulated conductors in conduit on a wall. */
    B1,
    /** Multi-core cable in conduit on a wall. */
    B2,
    /** Single-core or multi-core cable on a wall. */
    C
}
