#include "spanish/spanish.h"

namespace trenchbook::sheets {

const Phrases& purposePhrases() {
    static const Phrases all = {
        {"Start each set-up with a backsight on a known point, then one row a shot; shoot the benchmark again to close. ",
         "Empiece cada estación con una lectura atrás en un punto conocido, luego una fila por lectura; lea otra vez el banco "
         "para cerrar. "},
        {"Meters: 1.675 is 1 m 67.5 cm.", "Metros: 1.675 es 1 m 67.5 cm."},
        {"Decimal feet: 5.50 is 5 ft 6 in.", "Pies decimales: 5.50 es 5 ft 6 in."},
        {"One row for each point where something stands, joins, turns or ends. Runs go from node to node.",
         "Una fila por cada punto donde algo está, se une, gira o termina. Los tramos van de nodo a nodo."},
        {"The local rain frequency table as it is printed. Leave it blank when the rain is typed on Job.",
         "La tabla local de lluvias como está impresa. Déjela vacía si la lluvia está escrita en Job."},
        {"One row for each inlet: the areas that drain to it, the share of the rain that runs off, and what it enters by.",
         "Una fila por entrada: las áreas que le llegan, la parte de la lluvia que escurre y por dónde entra."},
        {"One row a pipe segment, upper node to lower node, in any order. Type the marked cells; the rest follows from the outlet "
         "uphill.",
         "Una fila por tramo de tubo, del nodo de arriba al de abajo, en cualquier orden. Escriba las celdas marcadas; lo demás "
         "sigue desde la salida hacia arriba."},
        {"One row for each shot between two nodes, where the ground dips or rises. No fitting is set there: cover, cut and digging "
         "follow the ground.",
         "Una fila por lectura entre dos nodos, donde el terreno baja o sube. Ahí no va pieza: tapado, corte y excavación siguen "
         "el terreno."},
        {"One row for each buried line that a run passes. Call 811 first; inside the tolerance dig by hand until it is seen.",
         "Una fila por cada línea enterrada que cruza un tramo. Llame antes al 811; dentro de la tolerancia excave a mano hasta "
         "verla."},
        {"One row for each way a line ends: the water that it ends in, the rim that it bubbles over, and what is around it.",
         "Una fila por cada final de línea: el agua en que termina, el borde por donde rebosa y lo que tiene alrededor."},
        {"A pit in the wrong soil is abandoned money: fill the soak test first. The pipe is sized as if the pit were not there.",
         "Un pozo en mal suelo es dinero perdido: primero la prueba de infiltración. El tubo se calcula como si no hubiera pozo."},
        {"One row for each pump basin that a line ends in, where the ground gives no fall to an outlet. The discharge's own trench, "
         "cover and crossings are not judged here.",
         "Una fila por cada cárcamo en que termina una línea, donde el terreno no da caída a una salida. La zanja, el tapado y los "
         "cruces de la descarga no se juzgan aquí."},
        {"Each line seen from the side, outlet on the left. Straight between nodes: shoot every grade break.",
         "Cada línea vista de lado, la salida a la izquierda. Recta entre nodos: tome cada quiebre del terreno."},
        {"Corners, lot lines, trees and what else stands on the lot. Type X and Y of two points, tape the rest to them; nodes by "
         "their ties on Nodes. Blank: no drawing.",
         "Esquinas, linderos, árboles y lo demás que hay en el lote. Escriba X y Y de dos puntos, mida el resto a ellos; los nodos "
         "por sus amarres en Nodes. Vacía: sin plano."},
        {"Distances between any two points of Layout or nodes, and offsets square from a wall. One to spare finds a slip of the "
         "others.",
         "Distancias entre dos puntos de Layout o nodos, y a escuadra desde un muro. Una de más descubre un error de las otras."},
        {"After the work: the invert of each node and two tapes to corners, for the owner and for whoever digs next.",
         "Después de la obra: la cota de cada nodo y dos cintas a esquinas, para el propietario y para quien excave después."},
        {"The lot from above, true to scale: buildings, lot lines, pipe, the thicker the larger. Arrows point downstream.",
         "El lote desde arriba, a escala: edificios, linderos, tubo, más grueso el más grande. Las flechas van aguas abajo."},
        {"The cheapest inverts that keep cover, slope, flow, cut, outlets and crossings, worked out from Runs; to use one, type it "
         "there.",
         "Las cotas más baratas que cumplen tapado, pendiente, caudal, corte, salidas y cruces, calculadas de Runs; para usar una, "
         "escríbala allá."},
        {"Flows of long lines by the rational method with travel time. Needs the table on Rain, and Minutes on Water; blank unless "
         "wanted.",
         "Caudales de líneas largas por el método racional con tiempo de viaje. Pide la tabla de Rain y Minutes en Water; vacía si "
         "no se quiere."},
        {"Blocks of even rain and one centered storm (alternating blocks) of the table on Rain against lines, openings, inlets and "
         "pit.",
         "Bloques de lluvia pareja y una tormenta centrada (bloques alternos) de la tabla de Rain contra líneas, bocas, entradas y "
         "pozo."},
        {"What to buy, counted from nodes, runs and pit. Nothing is typed in the upper table; add what the drawing does not show in "
         "Additions below.",
         "Lo que se compra, contado de nodos, tramos y pozo. En la tabla de arriba no se escribe; lo que el dibujo no muestra va "
         "abajo, en Additions."},
        {"Man-hours by kind of work. Quantities come from the other sheets; hours each are yours to keep.",
         "Horas de trabajo por clase. Las cantidades vienen de las otras hojas; las horas por unidad son suyas."},
        {"From direct cost to the price. Every line is rounded to the cent; totals are sums of the cents shown.",
         "Del costo directo al precio. Cada renglón se redondea al centavo; los totales suman los centavos que se ven."},
        {"Pit drawing", "Dibujo del pozo"},
        {"The pit cut open: levels, rock, soil, the tee, the water at its highest and seasonal high water; beside it the storm.",
         "El pozo cortado: cotas, piedra, suelo, la te, el agua más alta y el nivel freático alto; al lado, la tormenta."},
        {"NOTHING TO DRAW YET: the pit needs length, width, rock depth and the ground at its tee.",
         "TODAVÍA NO HAY QUÉ DIBUJAR: al pozo le faltan largo, ancho, piedra o el terreno en su te."},
        {"No storm yet: what is missing for it stands on Pit.",
         "Todavía sin tormenta: lo que falta está en Pit."},
        {"The order as issued: Takeoff's lines as values of that day (jobbook order copies them). Bills are checked against this "
         "sheet.",
         "El pedido como se envió: los renglones de Takeoff como valores de ese día (los copia jobbook order). Las cuentas se "
         "comparan con esta hoja."},
        {"Paste tickets and invoice lines in any order; each is matched to the order by its code. What passes is on Rules under "
         "bill.",
         "Pegue remisiones y renglones de factura en cualquier orden; cada uno se compara con el pedido por su código. Lo que se "
         "acepta está en Rules, bajo bill."},
        {"What was agreed, changes, payments and what is due. The invoice to the owner follows on its own sheet.",
         "Lo acordado, cambios, pagos y lo que se debe. La factura al propietario sigue en su propia hoja."},
        {"When the work may start and what holds it, the last day to cancel, the steps of payment under the state's limit. What of a law was not read is to be asked.",
         "Cuándo puede empezar la obra y qué la detiene, el último día para cancelar, los pagos bajo el tope del estado. Lo que no se leyó de una ley se pregunta."},
        {"The estimate as it was sold, by command as values that stay; then what it really took, from bills and time sheets. Next time's prices and hours come from here.",
         "Lo estimado al vender, por comando, como valores que se quedan; luego lo que costó de verdad, según facturas y horas. De aquí salen los precios y las horas de la próxima vez."},
        {"The price book's rows used on this job. One pack of the units costs the price; its age is counted to the quote's date.",
         "Las filas del libro de precios que usa esta obra. Un paquete de las unidades cuesta el precio; su edad se cuenta hasta la "
         "fecha de la oferta."},
        {"Every limit that the checks use, with its source. Sources disagree; local codes and licensed practice decide. Rules "
         "without a number stand on Tables.",
         "Cada límite que usan los juicios, con su fuente. Las fuentes no coinciden; deciden los códigos locales y la práctica con "
         "licencia. Las reglas sin número están en Tables."},
        {"The words that the functions know, with their numbers and where these come from. Case, order and plurals do not matter.",
         "Las palabras que conocen las funciones, con sus números y de dónde salen. No importan mayúsculas, orden ni plurales."},
        {"Every function of the add-in, with a live example. TRENCHBOOK.WHY tells the reason behind an Err:502.",
         "Cada función del complemento, con un ejemplo vivo. TRENCHBOOK.WHY dice la razón de un Err:502."},
    };
    return all;
}

}  // namespace trenchbook::sheets
