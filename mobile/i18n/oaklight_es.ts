<?xml version="1.0" encoding="utf-8"?>
<!DOCTYPE TS>
<TS version="2.1" language="es" sourcelanguage="en_US">
    <context>
        <name>AppModel</name>
        <message>
            <source>Tract</source>
            <translation>Predio</translation>
        </message>
        <message>
            <source>Walk</source>
            <translation>Camino</translation>
        </message>
        <message>
            <source>Tally</source>
            <translation>Conteo</translation>
        </message>
        <message>
            <source>Stand</source>
            <translation>Rodal</translation>
        </message>
        <message>
            <source>Light</source>
            <translation>Luz</translation>
        </message>
        <message>
            <source>Marks</source>
            <translation>Marcas</translation>
        </message>
        <message>
            <source>Stumps</source>
            <translation>Tocones</translation>
        </message>
        <message>
            <source>Setup</source>
            <translation>Ajustes</translation>
        </message>
        <message>
            <source>A copy to give away: %1</source>
            <translation>Una copia para regalar: %1</translation>
        </message>
        <message>
            <source>Rescued whole: %1</source>
            <translation>Rescatado entero: %1</translation>
        </message>
        <message>
            <source>Rescued, but not whole. What is lost stands in %1.txt</source>
            <translation>Rescatado, pero no entero. Lo perdido está en %1.txt</translation>
        </message>
    </context>
    <context>
        <name>BorderSheet</name>
        <message>
            <source>Border tree</source>
            <translation>Árbol de borde</translation>
        </message>
        <message>
            <source>Diameter, distance</source>
            <translation>Diámetro, distancia</translation>
        </message>
        <message>
            <source>Type diameter and distance</source>
            <translation>Escriba diámetro y distancia</translation>
        </message>
        <message>
            <source>%1: %2</source>
            <translation>%1: %2</translation>
        </message>
        <message>
            <source>Tape ends at the bark</source>
            <translation>La cinta llega a la corteza</translation>
        </message>
        <message>
            <source>At the middle of the stem</source>
            <translation>Al centro del tronco</translation>
        </message>
        <message>
            <source>Tape ends at the middle of the stem</source>
            <translation>La cinta llega al centro del tronco</translation>
        </message>
        <message>
            <source>A tap changes it</source>
            <translation>Un toque lo cambia</translation>
        </message>
    </context>
    <context>
        <name>BorderViewModel</name>
        <message>
            <source>Diameter</source>
            <translation>Diámetro</translation>
        </message>
        <message>
            <source>Taped distance</source>
            <translation>Distancia con cinta</translation>
        </message>
        <message>
            <source>Slope</source>
            <translation>Pendiente</translation>
        </message>
    </context>
    <context>
        <name>BoundaryViewModel</name>
        <message>
            <source>Map to draw on. %1</source>
            <translation>Mapa para dibujar. %1</translation>
        </message>
        <message>
            <source>There is nothing on this map to draw by. Walk the outline, or bring a file.</source>
            <translation>En este mapa no hay nada por donde dibujar. Camine el lindero o traiga un archivo.</translation>
        </message>
        <message>
            <source>1 corner</source>
            <translation>1 esquina</translation>
        </message>
        <message>
            <source>%1 corners</source>
            <translation>%1 esquinas</translation>
        </message>
        <message>
            <source>%1: %2 drawn, %3 stated</source>
            <translation>%1: %2 dibujado, %3 declarado</translation>
        </message>
        <message>
            <source>%1: %2 drawn, a new stand</source>
            <translation>%1: %2 dibujado, un rodal nuevo</translation>
        </message>
        <message>
            <source>Tap the corners in their order. A finger errs by many feet on a map of a whole tract: compare the area.</source>
            <translation>Toque las esquinas en su orden. En el mapa de todo un predio el dedo yerra por muchos pies: compare la superficie.</translation>
        </message>
        <message>
            <source>No position yet: an outline is walked with a receiver.</source>
            <translation>Aún no hay posición: un lindero se camina con receptor.</translation>
        </message>
        <message>
            <source>Walk the line. A corner is set every 16 ft, 5 m; poor fixes set none.</source>
            <translation>Camine la línea. Se pone una esquina cada 16 pies, 5 m; las posiciones malas no ponen ninguna.</translation>
        </message>
        <message>
            <source>Start, walk all around, and stop where you began; or set each corner by hand.</source>
            <translation>Empiece, dé toda la vuelta y pare donde empezó; o ponga cada esquina a mano.</translation>
        </message>
        <message>
            <source>GeoJSON, KML or GPX, laid in the folder of this tract or named by its whole path. Nothing is sent anywhere.</source>
            <translation>GeoJSON, KML o GPX, puesto en la carpeta de este predio o nombrado por su ruta completa. No se envía nada a ninguna parte.</translation>
        </message>
    </context>
    <context>
        <name>CardList</name>
        <message>
            <source>New crop tree</source>
            <translation>Nuevo árbol de futuro</translation>
        </message>
        <message>
            <source>Decide this stand</source>
            <translation>Decidir este rodal</translation>
        </message>
        <message>
            <source>Stores what is advised. What was decided by hand stays</source>
            <translation>Guarda lo recomendado. Lo decidido a mano se queda</translation>
        </message>
    </context>
    <context>
        <name>CardListModel</name>
        <message>
            <source>%1 → %2</source>
            <translation>%1 → %2</translation>
        </message>
    </context>
    <context>
        <name>CardRow</name>
        <message>
            <source>%1 → %2</source>
            <translation>%1 → %2</translation>
        </message>
    </context>
    <context>
        <name>CardTreeModel</name>
        <message>
            <source>decided by hand</source>
            <translation>decidido a mano</translation>
        </message>
        <message>
            <source>decided by the rules</source>
            <translation>decidido por las reglas</translation>
        </message>
        <message>
            <source>advised, not decided yet</source>
            <translation>recomendado, aún sin decidir</translation>
        </message>
        <message>
            <source>side not known</source>
            <translation>lado desconocido</translation>
        </message>
        <message>
            <source>the crop tree</source>
            <translation>el árbol de futuro</translation>
        </message>
        <message>
            <source>The rules now say: %1</source>
            <translation>Las reglas dicen ahora: %1</translation>
        </message>
        <message>
            <source>%1, %2</source>
            <translation>%1, %2</translation>
        </message>
    </context>
    <context>
        <name>CardTreeRow</name>
        <message>
            <source>%1, %2. %3, %4. %5</source>
            <translation>%1, %2. %3, %4. %5</translation>
        </message>
        <message>
            <source>Opens what can be decided for this tree</source>
            <translation>Abre lo que se puede decidir de este árbol</translation>
        </message>
        <message>
            <source>%1; %2</source>
            <translation>%1; %2</translation>
        </message>
    </context>
    <context>
        <name>CardViewModel</name>
        <message>
            <source>light now: %1</source>
            <translation>luz ahora: %1</translation>
        </message>
        <message>
            <source>as marked: %1</source>
            <translation>según lo marcado: %1</translation>
        </message>
        <message>
            <source>as advised: %1</source>
            <translation>según lo recomendado: %1</translation>
        </message>
        <message>
            <source>open</source>
            <translation>libre</translation>
        </message>
        <message>
            <source>shared with %1</source>
            <translation>compartido con %1</translation>
        </message>
        <message>
            <source>opens: %1 goes</source>
            <translation>se abre: sale %1</translation>
        </message>
        <message>
            <source>closed by %1</source>
            <translation>lo cierra %1</translation>
        </message>
        <message>
            <source>not looked</source>
            <translation>sin mirar</translation>
        </message>
        <message>
            <source>not sure: %1</source>
            <translation>no es seguro: %1</translation>
        </message>
        <message>
            <source>It leans into the crop tree.</source>
            <translation>Se inclina hacia el árbol de futuro.</translation>
        </message>
        <message>
            <source>Its stem is poor.</source>
            <translation>Su tronco es malo.</translation>
        </message>
        <message>
            <source>The owner wants it out.</source>
            <translation>El dueño lo quiere fuera.</translation>
        </message>
        <message>
            <source>It feeds wildlife here.</source>
            <translation>Da alimento a la fauna.</translation>
        </message>
        <message>
            <source>A den or nest is in it.</source>
            <translation>Tiene madriguera o nido.</translation>
        </message>
        <message>
            <source>It shelters the stem of the crop tree.</source>
            <translation>Protege el tronco del árbol de futuro.</translation>
        </message>
        <message>
            <source>The owner wants it kept.</source>
            <translation>El dueño quiere conservarlo.</translation>
        </message>
        <message>
            <source>Felling it would hurt the crop tree.</source>
            <translation>Al caer dañaría el árbol de futuro.</translation>
        </message>
        <message>
            <source>A snag is wanted here.</source>
            <translation>Aquí se quiere un muerto en pie.</translation>
        </message>
        <message>
            <source>It can not be felled safely.</source>
            <translation>No se puede tumbar sin peligro.</translation>
        </message>
        <message>
            <source>The leaves were off.</source>
            <translation>Estaba sin hojas.</translation>
        </message>
        <message>
            <source>I could not see the crown.</source>
            <translation>No pude ver la copa.</translation>
        </message>
        <message>
            <source>I want a second opinion.</source>
            <translation>Quiero otra opinión.</translation>
        </message>
    </context>
    <context>
        <name>CentreSheet</name>
        <message>
            <source>Centre of %1</source>
            <translation>Centro de %1</translation>
        </message>
        <message>
            <source>Look up before you wait here. Lay the tablet on the centre stake and leave it there.</source>
            <translation>Mire hacia arriba antes de esperar aquí. Ponga la tableta en la estaca central y déjela quieta.</translation>
        </message>
        <message>
            <source>fixes in the mean</source>
            <translation>posiciones en la media</translation>
        </message>
        <message>
            <source>spread of the fixes</source>
            <translation>dispersión de las posiciones</translation>
        </message>
        <message>
            <source>accuracy, kept with the plot</source>
            <translation>exactitud, se guarda con la parcela</translation>
        </message>
        <message>
            <source>Keep it, marked as poor</source>
            <translation>Guardarla, marcada como mala</translation>
        </message>
        <message>
            <source>Keep this position</source>
            <translation>Guardar esta posición</translation>
        </message>
    </context>
    <context>
        <name>CentreViewModel</name>
        <message>
            <source>No fix yet. Without one the plot keeps the position it has, or none.</source>
            <translation>Aún no hay posición. Sin ella la parcela queda con la que tiene, o sin ninguna.</translation>
        </message>
        <message>
            <source>POOR: the receiver does not say how good its fixes are. Kept, it is marked so.</source>
            <translation>MALA: el receptor no dice qué tan buenas son sus posiciones. Si se guarda, queda marcada así.</translation>
        </message>
        <message>
            <source>POOR: no fix was within %1. Wait, or keep it marked so.</source>
            <translation>MALA: ninguna posición llegó a %1. Espere, o guárdela marcada así.</translation>
        </message>
        <message>
            <source>Wait for %1 fixes, half a minute.</source>
            <translation>Espere %1 posiciones, medio minuto.</translation>
        </message>
        <message>
            <source>Enough to keep.</source>
            <translation>Basta para guardar.</translation>
        </message>
        <message>
            <source>1 poor fix was left out.</source>
            <translation>Se dejó fuera 1 posición mala.</translation>
        </message>
        <message>
            <source>%1 poor fixes were left out.</source>
            <translation>Se dejaron fuera %1 posiciones malas.</translation>
        </message>
    </context>
    <context>
        <name>ChosenPlot</name>
        <message>
            <source>Walk there</source>
            <translation>Ir allá</translation>
        </message>
        <message>
            <source>Tally</source>
            <translation>Conteo</translation>
        </message>
        <message>
            <source>Put away</source>
            <translation>Guardar</translation>
        </message>
    </context>
    <context>
        <name>CrownSides</name>
        <message>
            <source>North</source>
            <translation>Norte</translation>
        </message>
        <message>
            <source>East</source>
            <translation>Este</translation>
        </message>
        <message>
            <source>South</source>
            <translation>Sur</translation>
        </message>
        <message>
            <source>West</source>
            <translation>Oeste</translation>
        </message>
    </context>
    <context>
        <name>DecisionSheet</name>
        <message>
            <source>Take my decision back</source>
            <translation>Retirar mi decisión</translation>
        </message>
        <message>
            <source>The rules decide this tree again</source>
            <translation>Las reglas vuelven a decidir este árbol</translation>
        </message>
        <message>
            <source>Decide it yourself</source>
            <translation>Decídalo usted</translation>
        </message>
        <message>
            <source>Why?</source>
            <translation>¿Por qué?</translation>
        </message>
        <message>
            <source>Or in your own words</source>
            <translation>O con sus palabras</translation>
        </message>
        <message>
            <source>The reason, in your own words</source>
            <translation>La razón, con sus palabras</translation>
        </message>
        <message>
            <source>Decide: %1</source>
            <translation>Decidir: %1</translation>
        </message>
        <message>
            <source>Look at this tree again</source>
            <translation>Mirar otra vez este árbol</translation>
        </message>
        <message>
            <source>Correct its species, size, crown and how it stands</source>
            <translation>Corrige especie, tamaño, copa y posición</translation>
        </message>
        <message>
            <source>Give it a card of its own</source>
            <translation>Darle su propia tarjeta</translation>
        </message>
        <message>
            <source>Remove this card</source>
            <translation>Quitar esta tarjeta</translation>
        </message>
        <message>
            <source>Take it off this card</source>
            <translation>Quitarlo de esta tarjeta</translation>
        </message>
        <message>
            <source>Undo brings it back</source>
            <translation>Deshacer lo devuelve</translation>
        </message>
        <message>
            <source>Now: %1</source>
            <translation>Ahora: %1</translation>
        </message>
    </context>
    <context>
        <name>DesignSheet</name>
        <message>
            <source>Design</source>
            <translation>Diseño</translation>
        </message>
        <message>
            <source>Which trees are in</source>
            <translation>Qué árboles entran</translation>
        </message>
        <message>
            <source>or another</source>
            <translation>u otro</translation>
        </message>
        <message>
            <source>Smallest tree tallied (DBH)</source>
            <translation>Árbol más delgado que se cuenta (DAP)</translation>
        </message>
        <message>
            <source>Seedlings</source>
            <translation>Plántulas</translation>
        </message>
        <message>
            <source>All plots of the cruise are laid out so: %1</source>
            <translation>Todas las parcelas del inventario son así: %1</translation>
        </message>
        <message>
            <source>Save the design</source>
            <translation>Guardar el diseño</translation>
        </message>
    </context>
    <context>
        <name>DesignViewModel</name>
        <message>
            <source>By prism or gauge</source>
            <translation>Con prisma o calibrador</translation>
        </message>
        <message>
            <source>Circles of one size</source>
            <translation>Círculos de un tamaño</translation>
        </message>
        <message>
            <source>Basal area factor, ft²/ac</source>
            <translation>Factor de área basal, ft²/ac</translation>
        </message>
        <message>
            <source>Basal area factor, m²/ha</source>
            <translation>Factor de área basal, m²/ha</translation>
        </message>
        <message>
            <source>Size of a plot, acres</source>
            <translation>Tamaño de parcela, acres</translation>
        </message>
        <message>
            <source>Size of a plot, hectares</source>
            <translation>Tamaño de parcela, hectáreas</translation>
        </message>
        <message>
            <source>every tree</source>
            <translation>todos los árboles</translation>
        </message>
        <message>
            <source>%1 in</source>
            <translation>%1 in</translation>
        </message>
        <message>
            <source>%1 cm</source>
            <translation>%1 cm</translation>
        </message>
        <message>
            <source>not counted</source>
            <translation>no se cuentan</translation>
        </message>
        <message>
            <source>on %1 acre</source>
            <translation>en %1 acre</translation>
        </message>
        <message>
            <source>on %1 hectare</source>
            <translation>en %1 hectárea</translation>
        </message>
        <message>
            <source>cruise of %1</source>
            <translation>inventario de %1</translation>
        </message>
    </context>
    <context>
        <name>DeskBar</name>
        <message>
            <source>DEMO: invented trees</source>
            <translation>DEMO: árboles inventados</translation>
        </message>
        <message>
            <source>For looking only</source>
            <translation>Solo para mirar</translation>
        </message>
        <message>
            <source>Shows the names of all pages</source>
            <translation>Muestra los nombres de las páginas</translation>
        </message>
        <message>
            <source>Undo</source>
            <translation>Deshacer</translation>
        </message>
        <message>
            <source>Redo</source>
            <translation>Rehacer</translation>
        </message>
        <message>
            <source>%1. %2</source>
            <translation>%1. %2</translation>
        </message>
        <message>
            <source>DEMO. %1</source>
            <translation>DEMO. %1</translation>
        </message>
    </context>
    <context>
        <name>DeskViewModel</name>
        <message>
            <source>Unnamed tract</source>
            <translation>Predio sin nombre</translation>
        </message>
    </context>
    <context>
        <name>DiskRoom</name>
        <message>
            <source>Only %1 MiB are free on this device: finish this plot, begin no other. Give files away or delete what is not needed.</source>
            <translation>Solo quedan %1 MiB libres en este aparato: termine esta parcela y no empiece otra. Entregue archivos o borre lo que no necesite.</translation>
        </message>
        <message>
            <source>Only %1 MiB are free on this device. Give files away or delete what is not needed before the next day in the woods.</source>
            <translation>Solo quedan %1 MiB libres en este aparato. Entregue archivos o borre lo que no necesite antes de volver al bosque.</translation>
        </message>
        <message>
            <source>Only %1 MiB are free on this device, so no plot is begun.</source>
            <translation>Solo quedan %1 MiB libres en este aparato, así que no se empieza ninguna parcela.</translation>
        </message>
        <message>
            <source>Give files away or delete what is not needed, then start it again.</source>
            <translation>Entregue archivos o borre lo que no necesite y empiécela de nuevo.</translation>
        </message>
    </context>
    <context>
        <name>FactsSheet</name>
        <message>
            <source>About this tract</source>
            <translation>Sobre este predio</translation>
        </message>
        <message>
            <source>Save</source>
            <translation>Guardar</translation>
        </message>
    </context>
    <context>
        <name>FigureBlock</name>
        <message>
            <source>%1: %2</source>
            <translation>%1: %2</translation>
        </message>
    </context>
    <context>
        <name>FigureCell</name>
        <message>
            <source>Tells how it was computed and by which source</source>
            <translation>Dice cómo se calculó y con qué fuente</translation>
        </message>
    </context>
    <context>
        <name>FigureRow</name>
        <message>
            <source>%1 %2. %3. %4</source>
            <translation>%1 %2. %3. %4</translation>
        </message>
    </context>
    <context>
        <name>FilesSheet</name>
        <message>
            <source>Join files of other tablets</source>
            <translation>Unir archivos de otras tabletas</translation>
        </message>
        <message>
            <source>Their work and ours in one file</source>
            <translation>Su trabajo y el nuestro en un archivo</translation>
        </message>
        <message>
            <source>Opening the tract …</source>
            <translation>Abriendo el predio …</translation>
        </message>
        <message>
            <source>Tract files</source>
            <translation>Archivos</translation>
        </message>
        <message>
            <source>Name of a new tract</source>
            <translation>Nombre de un predio nuevo</translation>
        </message>
        <message>
            <source>Make a new tract</source>
            <translation>Crear un predio</translation>
        </message>
        <message>
            <source>Opened before</source>
            <translation>Abiertos antes</translation>
        </message>
        <message>
            <source>Open the demo tract</source>
            <translation>Abrir el predio demo</translation>
        </message>
        <message>
            <source>Copy for a friend</source>
            <translation>Copia para un amigo</translation>
        </message>
        <message>
            <source>One clean file beside the open one</source>
            <translation>Un archivo limpio junto al abierto</translation>
        </message>
        <message>
            <source>All files in the app's folder</source>
            <translation>Todos los archivos de la carpeta</translation>
        </message>
        <message>
            <source>A file elsewhere</source>
            <translation>Un archivo en otro lugar</translation>
        </message>
        <message>
            <source>Its whole path, ending in .gpkg</source>
            <translation>La ruta completa, termina en .gpkg</translation>
        </message>
        <message>
            <source>Open that file</source>
            <translation>Abrir ese archivo</translation>
        </message>
    </context>
    <context>
        <name>FitListModel</name>
        <message>
            <source>all species</source>
            <translation>todas las especies</translation>
        </message>
        <message>
            <source>Heights of the tract, %1</source>
            <translation>Alturas del predio, %1</translation>
        </message>
        <message>
            <source>Crowns in %1, %2</source>
            <translation>Copas en %1, %2</translation>
        </message>
        <message>
            <source>%1: the fitted curve with its %2 trees</source>
            <translation>%1: la curva ajustada con sus %2 árboles</translation>
        </message>
        <message>
            <source>No local curve: that takes %1 measured trees. The book&apos;s crowns are used, and trees without a height have none.</source>
            <translation>Sin curva local: hacen falta %1 árboles medidos. Se usan las copas del libro, y los árboles sin altura no la tienen.</translation>
        </message>
        <message>
            <source>Local curves, used before the book: of a species its own, else that of all species.</source>
            <translation>Curvas locales, antes que el libro: la de la especie, o si no la de todas.</translation>
        </message>
        <message>
            <source>Volumes by the tract&apos;s own table come first.</source>
            <translation>Los volúmenes de la tabla del predio van primero.</translation>
        </message>
    </context>
    <context>
        <name>GuardListModel</name>
        <message>
            <source>%1: %2 now, %3 after; floor %4 %5</source>
            <translation>%1: %2 ahora, %3 después; mínimo %4 %5</translation>
        </message>
        <message>
            <source>%1: %2 now, %3 after; ceiling %4 %5</source>
            <translation>%1: %2 ahora, %3 después; máximo %4 %5</translation>
        </message>
        <message>
            <source>BROKEN</source>
            <translation>ROTO</translation>
        </message>
        <message>
            <source>Near its limit</source>
            <translation>Cerca del límite</translation>
        </message>
        <message>
            <source>Holds</source>
            <translation>Se cumple</translation>
        </message>
    </context>
    <context>
        <name>GuardRows</name>
        <message>
            <source>Guards of the stand, with the marked trees gone</source>
            <translation>Límites del rodal, sin los árboles marcados</translation>
        </message>
        <message>
            <source>Guards are not known: the stand has no plots yet, or nobody said how much of it was walked.</source>
            <translation>Límites desconocidos: el rodal no tiene parcelas, o nadie dijo cuánto se recorrió.</translation>
        </message>
        <message>
            <source>%1. %2</source>
            <translation>%1. %2</translation>
        </message>
        <message>
            <source>Show those near their limit only</source>
            <translation>Solo los que están cerca del límite</translation>
        </message>
        <message>
            <source>%1 of %2 hold: show them</source>
            <translation>%1 de %2 se cumplen: verlos</translation>
        </message>
        <message>
            <source>Guards are not known yet: they need the plots of the stand, and how much of it was walked.</source>
            <translation>Los límites aún no se conocen: hacen falta las parcelas del rodal y cuánto de él se recorrió.</translation>
        </message>
    </context>
    <context>
        <name>Intro</name>
        <message>
            <source>Tally a tree with one gesture: press its species, slide to its diameter, lift.</source>
            <translation>Cuente un árbol con un gesto: presione la especie, deslice al diámetro, suelte.</translation>
        </message>
        <message>
            <source>Stand at a good oak, tell who crowds it on each side, and see how much light each cut buys.</source>
            <translation>Párese junto a un buen roble, diga quién lo aprieta en cada lado y vea cuánta luz da cada corte.</translation>
        </message>
        <message>
            <source>Mark the trees, and hand over a list that cannot be misread.</source>
            <translation>Marque los árboles y entregue una lista que no se presta a errores.</translation>
        </message>
        <message>
            <source>No app replaces looking up. Dead limbs, hung trees and leaning stems kill people: look at every tree again before you work under it.</source>
            <translation>Ninguna aplicación reemplaza mirar hacia arriba. Ramas muertas, árboles colgados y troncos inclinados matan: mire otra vez cada árbol antes de trabajar debajo.</translation>
        </message>
        <message>
            <source>Caution</source>
            <translation>Precaución</translation>
        </message>
        <message>
            <source>Skip</source>
            <translation>Saltar</translation>
        </message>
        <message>
            <source>Goes on to the caution</source>
            <translation>Pasa a la precaución</translation>
        </message>
        <message>
            <source>I look up. Begin</source>
            <translation>Yo miro arriba. Empezar</translation>
        </message>
        <message>
            <source>Next</source>
            <translation>Siguiente</translation>
        </message>
    </context>
    <context>
        <name>KeyPad</name>
        <message>
            <source>Delete digit</source>
            <translation>Borrar cifra</translation>
        </message>
    </context>
    <context>
        <name>KeypadSheet</name>
        <message>
            <source>Record</source>
            <translation>Anotar</translation>
        </message>
        <message>
            <source>Type the diameter</source>
            <translation>Escriba el diámetro</translation>
        </message>
    </context>
    <context>
        <name>LastTrees</name>
        <message>
            <source>Opens this tree</source>
            <translation>Abre este árbol</translation>
        </message>
        <message>
            <source>Opens what was counted</source>
            <translation>Abre lo contado</translation>
        </message>
    </context>
    <context>
        <name>LayoutSheet</name>
        <message>
            <source>Lay out plots</source>
            <translation>Trazar parcelas</translation>
        </message>
        <message>
            <source>What the cruise is to reach</source>
            <translation>Lo que debe alcanzar el inventario</translation>
        </message>
        <message>
            <source>Of basal area, at 95 % confidence</source>
            <translation>Del área basal, con 95 % de confianza</translation>
        </message>
        <message>
            <source>How plots are shared among stands</source>
            <translation>Reparto de parcelas entre rodales</translation>
        </message>
        <message>
            <source>by area</source>
            <translation>por superficie</translation>
        </message>
        <message>
            <source>by area and spread</source>
            <translation>por superficie y dispersión</translation>
        </message>
        <message>
            <source>How plots lie</source>
            <translation>Cómo quedan las parcelas</translation>
        </message>
        <message>
            <source>on a grid</source>
            <translation>en cuadrícula</translation>
        </message>
        <message>
            <source>by chance</source>
            <translation>al azar</translation>
        </message>
        <message>
            <source>Lines of the grid, degrees from TRUE north</source>
            <translation>Líneas de la cuadrícula, grados desde el norte VERDADERO</translation>
        </message>
        <message>
            <source>Across the slope, not along a ridge or a road</source>
            <translation>A través de la ladera, no a lo largo de un filo o camino</translation>
        </message>
        <message>
            <source>Seed of the start by chance</source>
            <translation>Semilla del inicio al azar</translation>
        </message>
        <message>
            <source>The same seed brings the same plots. Do not try seeds until one fits</source>
            <translation>La misma semilla trae las mismas parcelas. No pruebe semillas hasta que una guste</translation>
        </message>
        <message>
            <source>Look at it</source>
            <translation>Ver el trazado</translation>
        </message>
        <message>
            <source>Keep these plots</source>
            <translation>Guardar estas parcelas</translation>
        </message>
        <message>
            <source>Kind of wood, if not measured</source>
            <translation>Tipo de bosque, si no está medido</translation>
        </message>
    </context>
    <context>
        <name>LayoutViewModel</name>
        <message>
            <source>an error, %</source>
            <translation>un error, %</translation>
        </message>
        <message>
            <source>plots in all</source>
            <translation>parcelas en total</translation>
        </message>
        <message>
            <source>plots an acre</source>
            <translation>parcelas por acre</translation>
        </message>
        <message>
            <source>hours</source>
            <translation>horas</translation>
        </message>
        <message>
            <source>even</source>
            <translation>parejo</translation>
        </message>
        <message>
            <source>mixed hardwoods</source>
            <translation>latifoliadas mixtas</translation>
        </message>
        <message>
            <source>patchy or cut over</source>
            <translation>desigual o ya cortado</translation>
        </message>
        <message>
            <source>A seed is a whole number.</source>
            <translation>Una semilla es un número entero.</translation>
        </message>
        <message>
            <source>Give one without a sign.</source>
            <translation>Dé uno sin signo.</translation>
        </message>
        <message>
            <source>There is no cruise yet.</source>
            <translation>Aún no hay inventario.</translation>
        </message>
        <message>
            <source>Choose the design of the cruise first.</source>
            <translation>Elija primero el diseño del inventario.</translation>
        </message>
        <message>
            <source>%1: %2 plots on %3</source>
            <translation>%1: %2 parcelas en %3</translation>
        </message>
        <message>
            <source>, every %1</source>
            <translation>, cada %1</translation>
        </message>
        <message>
            <source>; spread %1 %, %2</source>
            <translation>; dispersión %1 %, %2</translation>
        </message>
        <message>
            <source>%1 plots, %2; expected error %3 % at 95 %; about %4 hours on the ground</source>
            <translation>%1 parcelas, %2; error esperado %3 % al 95 %; unas %4 horas en el monte</translation>
        </message>
    </context>
    <context>
        <name>LightFigures</name>
        <message>
            <source>Light: %1, %2</source>
            <translation>Luz: %1, %2</translation>
        </message>
        <message>
            <source>Tells how it was computed and by which source</source>
            <translation>Dice cómo se calculó y según qué fuente</translation>
        </message>
    </context>
    <context>
        <name>LightPage</name>
        <message>
            <source>Stands</source>
            <translation>Rodales</translation>
        </message>
    </context>
    <context>
        <name>LightViewModel</name>
        <message>
            <source>Nothing new: every tree is decided so already.</source>
            <translation>Nada nuevo: cada árbol ya está decidido así.</translation>
        </message>
        <message numerus="yes">
            <source>%n tree(s) decided.</source>
            <translation>
                <numerusform>%n árbol decidido.</numerusform>
                <numerusform>%n árboles decididos.</numerusform>
            </translation>
        </message>
    </context>
    <context>
        <name>ListRow</name>
        <message>
            <source>%1: %2</source>
            <translation>%1: %2</translation>
        </message>
    </context>
    <context>
        <name>Main</name>
        <message>
            <source>Opening the tract …</source>
            <translation>Abriendo el predio …</translation>
        </message>
    </context>
    <context>
        <name>MarkFilters</name>
        <message>
            <source>Find a tag</source>
            <translation>Buscar una placa</translation>
        </message>
        <message>
            <source>Working …</source>
            <translation>Trabajando …</translation>
        </message>
    </context>
    <context>
        <name>MarkListModel</name>
        <message>
            <source>Not decided</source>
            <translation>Sin decidir</translation>
        </message>
        <message>
            <source>on the map</source>
            <translation>en el mapa</translation>
        </message>
        <message>
            <source>no position</source>
            <translation>sin posición</translation>
        </message>
        <message>
            <source>for the %1</source>
            <translation>para el %1</translation>
        </message>
        <message>
            <source>by hand</source>
            <translation>a mano</translation>
        </message>
    </context>
    <context>
        <name>MarkRow</name>
        <message>
            <source>%1; %2</source>
            <translation>%1; %2</translation>
        </message>
    </context>
    <context>
        <name>MarkedTreeViewModel</name>
        <message>
            <source>STOP. %1</source>
            <translation>ALTO. %1</translation>
        </message>
        <message>
            <source>Extra care. %1</source>
            <translation>Mucho cuidado. %1</translation>
        </message>
        <message>
            <source>Nothing that is recorded of this tree calls for a caution. Look up and around yourself all the same: no record shows everything.</source>
            <translation>Nada anotado de este árbol pide precaución. Aun así, mire arriba y a su alrededor: ningún registro lo muestra todo.</translation>
        </message>
        <message>
            <source>Look up and around yourself too: no record shows everything.</source>
            <translation>Mire también arriba y a su alrededor: ningún registro lo muestra todo.</translation>
        </message>
        <message>
            <source>Not decided</source>
            <translation>Sin decidir</translation>
        </message>
        <message>
            <source>Decide its stand on the page Light.</source>
            <translation>Decida su rodal en la página Luz.</translation>
        </message>
        <message>
            <source>%1: %2</source>
            <translation>%1: %2</translation>
        </message>
        <message>
            <source>Method</source>
            <translation>Método</translation>
        </message>
        <message>
            <source>Product</source>
            <translation>Producto</translation>
        </message>
        <message>
            <source>Goes to</source>
            <translation>Va para</translation>
        </message>
        <message>
            <source>Decided</source>
            <translation>Decidido</translation>
        </message>
        <message>
            <source>by hand</source>
            <translation>a mano</translation>
        </message>
        <message>
            <source>by the rules</source>
            <translation>por las reglas</translation>
        </message>
        <message>
            <source>Position</source>
            <translation>Posición</translation>
        </message>
        <message>
            <source>not known</source>
            <translation>desconocido</translation>
        </message>
    </context>
    <context>
        <name>Marks</name>
        <message>
            <source>Take</source>
            <translation>Sacar</translation>
        </message>
        <message>
            <source>Keep</source>
            <translation>Conservar</translation>
        </message>
        <message>
            <source>Kill standing</source>
            <translation>Matar en pie</translation>
        </message>
        <message>
            <source>Look again</source>
            <translation>Mirar otra vez</translation>
        </message>
        <message>
            <source>fell by hand</source>
            <translation>tumbar a mano</translation>
        </message>
        <message>
            <source>fell by machine</source>
            <translation>tumbar con máquina</translation>
        </message>
        <message>
            <source>girdle</source>
            <translation>anillar</translation>
        </message>
        <message>
            <source>sawlog</source>
            <translation>troza de aserrío</translation>
        </message>
        <message>
            <source>pulpwood</source>
            <translation>pulpa</translation>
        </message>
        <message>
            <source>firewood</source>
            <translation>leña</translation>
        </message>
        <message>
            <source>logger</source>
            <translation>maderero</translation>
        </message>
        <message>
            <source>firewood cutter</source>
            <translation>leñador</translation>
        </message>
        <message>
            <source>girdler</source>
            <translation>anillador</translation>
        </message>
        <message>
            <source>owner</source>
            <translation>propietario</translation>
        </message>
        <message>
            <source>%1 of 4 sides free</source>
            <translation>%1 de 4 lados libres</translation>
        </message>
        <message>
            <source>, %1 not known</source>
            <translation>, %1 sin saber</translation>
        </message>
        <message>
            <source>N</source>
            <translation>N</translation>
        </message>
        <message>
            <source>E</source>
            <translation>E</translation>
        </message>
        <message>
            <source>S</source>
            <translation>S</translation>
        </message>
        <message>
            <source>W</source>
            <translation>O</translation>
        </message>
    </context>
    <context>
        <name>MarksPage</name>
        <message>
            <source>Packet to hand over</source>
            <translation>Paquete para entregar</translation>
        </message>
        <message>
            <source>Make the packet</source>
            <translation>Hacer el paquete</translation>
        </message>
        <message>
            <source>Writes the pages and the list beside the tract file</source>
            <translation>Escribe las páginas y la lista junto al archivo del predio</translation>
        </message>
    </context>
    <context>
        <name>MarksViewModel</name>
        <message>
            <source>Everybody's</source>
            <translation>De todos</translation>
        </message>
        <message>
            <source>Logger's</source>
            <translation>Del maderero</translation>
        </message>
        <message>
            <source>Firewood cutter's</source>
            <translation>Del leñador</translation>
        </message>
        <message>
            <source>%1 (%2)</source>
            <translation>%1 (%2)</translation>
        </message>
        <message>
            <source>All</source>
            <translation>Todos</translation>
        </message>
        <message>
            <source>Not decided</source>
            <translation>Sin decidir</translation>
        </message>
        <message>
            <source>%1 of %2 trees</source>
            <translation>%1 de %2 árboles</translation>
        </message>
        <message>
            <source>; %1 decided by hand</source>
            <translation>; %1 decididos a mano</translation>
        </message>
        <message>
            <source>; %1 with a STOP</source>
            <translation>; %1 con ALTO</translation>
        </message>
        <message>
            <source>For the %1: %2</source>
            <translation>Para el %1: %2</translation>
        </message>
    </context>
    <context>
        <name>NoTract</name>
        <message>
            <source>No tract is open</source>
            <translation>No hay predio abierto</translation>
        </message>
        <message>
            <source>Open the demo tract</source>
            <translation>Abrir el predio demo</translation>
        </message>
    </context>
    <context>
        <name>OpenCard</name>
        <message>
            <source>All cards</source>
            <translation>Todas las tarjetas</translation>
        </message>
        <message>
            <source>Working …</source>
            <translation>Trabajando …</translation>
        </message>
    </context>
    <context>
        <name>OutlineSheet</name>
        <message>
            <source>Outline of %1</source>
            <translation>Lindero de %1</translation>
        </message>
        <message>
            <source>Where the outline comes from</source>
            <translation>De dónde viene el lindero</translation>
        </message>
        <message>
            <source>A file</source>
            <translation>Un archivo</translation>
        </message>
        <message>
            <source>Drawn on the map</source>
            <translation>Dibujado en el mapa</translation>
        </message>
        <message>
            <source>Walked</source>
            <translation>Caminado</translation>
        </message>
        <message>
            <source>Area of the stand from now on</source>
            <translation>Superficie del rodal de ahora en adelante</translation>
        </message>
        <message>
            <source>as stated</source>
            <translation>la declarada</translation>
        </message>
        <message>
            <source>as drawn</source>
            <translation>la dibujada</translation>
        </message>
        <message>
            <source>A file elsewhere</source>
            <translation>Un archivo en otro lugar</translation>
        </message>
        <message>
            <source>Its whole path</source>
            <translation>Su ruta completa</translation>
        </message>
        <message>
            <source>Read that file</source>
            <translation>Leer ese archivo</translation>
        </message>
        <message>
            <source>Stop</source>
            <translation>Parar</translation>
        </message>
        <message>
            <source>Start walking</source>
            <translation>Empezar a caminar</translation>
        </message>
        <message>
            <source>Corner here</source>
            <translation>Esquina aquí</translation>
        </message>
        <message>
            <source>Take back the last corner</source>
            <translation>Quitar la última esquina</translation>
        </message>
        <message>
            <source>Keep the outline</source>
            <translation>Guardar el lindero</translation>
        </message>
        <message>
            <source>Outlines</source>
            <translation>Linderos</translation>
        </message>
    </context>
    <context>
        <name>PacketActions</name>
        <message>
            <source>Back</source>
            <translation>Volver</translation>
        </message>
        <message>
            <source>Make the packet</source>
            <translation>Hacer el paquete</translation>
        </message>
        <message>
            <source>Writes the pages and the list beside the tract file</source>
            <translation>Escribe las páginas y la lista junto al archivo del predio</translation>
        </message>
    </context>
    <context>
        <name>PacketChoices</name>
        <message>
            <source>Decide all stands</source>
            <translation>Decidir todos los rodales</translation>
        </message>
    </context>
    <context>
        <name>PacketPages</name>
        <message>
            <source>Page before</source>
            <translation>Página anterior</translation>
        </message>
        <message>
            <source>Next page</source>
            <translation>Página siguiente</translation>
        </message>
    </context>
    <context>
        <name>PacketViewModel</name>
        <message>
            <source>%1 %2</source>
            <translation>%1 %2</translation>
        </message>
        <message>
            <source> (%1 board feet, %2)</source>
            <translation> (%1 pies tablares, %2)</translation>
        </message>
        <message>
            <source> (%1 cords)</source>
            <translation> (%1 cuerdas)</translation>
        </message>
        <message>
            <source> (%1 without a volume)</source>
            <translation> (%1 sin volumen)</translation>
        </message>
        <message>
            <source>%1 for a trained feller only</source>
            <translation>%1 solo para un talador capacitado</translation>
        </message>
        <message>
            <source>%1 to leave alone</source>
            <translation>%1 que no se tocan</translation>
        </message>
        <message>
            <source>For the %1: %2 to cut. %3</source>
            <translation>Para el %1: %2 por cortar. %3</translation>
        </message>
        <message>
            <source>For the %1: %2 to kill standing. %3</source>
            <translation>Para el %1: %2 por matar en pie. %3</translation>
        </message>
        <message>
            <source>For the %1: %2 go. %3</source>
            <translation>Para el %1: %2 que se van. %3</translation>
        </message>
        <message>
            <source>For the %1</source>
            <translation>Para el %1</translation>
        </message>
        <message>
            <source>No tree was walked yet. Make crop tree cards on the page Light first.</source>
            <translation>Aún no se recorrió ningún árbol. Haga primero tarjetas en la página Luz.</translation>
        </message>
        <message>
            <source>Nothing is decided yet. Decide all stands now, or one at a time on the page Light.</source>
            <translation>Nada está decidido. Decida todos los rodales ahora, o uno por uno en la página Luz.</translation>
        </message>
        <message>
            <source>Something changed since these trees were decided: %1. Decide again, so that the list says what the rules say now. What was decided by hand stays.</source>
            <translation>Algo cambió desde que se decidió: %1. Decida otra vez, para que la lista diga lo que dicen ahora las reglas. Lo decidido a mano se queda.</translation>
        </message>
        <message>
            <source>Working …</source>
            <translation>Trabajando …</translation>
        </message>
        <message>
            <source>Written: %1, in the folder %2</source>
            <translation>Escrito: %1, en la carpeta %2</translation>
        </message>
    </context>
    <context>
        <name>PageSheet</name>
        <message>
            <source>Pages</source>
            <translation>Páginas</translation>
        </message>
    </context>
    <context>
        <name>PagesActions</name>
        <message>
            <source>Back</source>
            <translation>Volver</translation>
        </message>
    </context>
    <context>
        <name>PagesViewModel</name>
        <message>
            <source>Letter</source>
            <translation>Carta</translation>
        </message>
        <message>
            <source>A4</source>
            <translation>A4</translation>
        </message>
        <message>
            <source>Page %1 of %2</source>
            <translation>Página %1 de %2</translation>
        </message>
    </context>
    <context>
        <name>Plot</name>
        <message>
            <source>%1, plot %2</source>
            <translation>%1, parcela %2</translation>
        </message>
        <message>
            <source>to do</source>
            <translation>por hacer</translation>
        </message>
        <message>
            <source>done</source>
            <translation>hecha</translation>
        </message>
        <message>
            <source>empty</source>
            <translation>vacía</translation>
        </message>
        <message>
            <source>skipped</source>
            <translation>saltada</translation>
        </message>
    </context>
    <context>
        <name>PlotsSheet</name>
        <message>
            <source>Add plots</source>
            <translation>Agregar parcelas</translation>
        </message>
        <message>
            <source>Choose the design of the cruise first.</source>
            <translation>Elija primero el diseño del inventario.</translation>
        </message>
        <message>
            <source>%1: %2</source>
            <translation>%1: %2</translation>
        </message>
        <message>
            <source>How many to add</source>
            <translation>Cuántas agregar</translation>
        </message>
        <message>
            <source>or another number</source>
            <translation>u otro número</translation>
        </message>
    </context>
    <context>
        <name>PointSheet</name>
        <message>
            <source>Measure point</source>
            <translation>Punto de medición</translation>
        </message>
        <message>
            <source>Each tree with its size</source>
            <translation>Cada árbol con su tamaño</translation>
        </message>
        <message>
            <source>Each tree with its size; sawlog trees with logs and height.</source>
            <translation>Cada árbol con su tamaño; los de aserrío con trozas y altura.</translation>
        </message>
        <message>
            <source>Count point</source>
            <translation>Punto de conteo</translation>
        </message>
        <message>
            <source>Trees by species, without sizes</source>
            <translation>Árboles por especie, sin tamaños</translation>
        </message>
        <message>
            <source>How many trees of which species are in. No sizes.</source>
            <translation>Cuántos árboles de qué especie entran. Sin tamaños.</translation>
        </message>
        <message>
            <source>Counted here</source>
            <translation>Contado aquí</translation>
        </message>
        <message>
            <source>One less: %1</source>
            <translation>Uno menos: %1</translation>
        </message>
        <message>
            <source>One more: %1</source>
            <translation>Uno más: %1</translation>
        </message>
    </context>
    <context>
        <name>PointViewModel</name>
        <message>
            <source>Count point</source>
            <translation>Punto de conteo</translation>
        </message>
        <message>
            <source>Measure point</source>
            <translation>Punto de medición</translation>
        </message>
        <message>
            <source>%1: %2</source>
            <translation>%1: %2</translation>
        </message>
    </context>
    <context>
        <name>PrintedPages</name>
        <message>
            <source>Page before</source>
            <translation>Página anterior</translation>
        </message>
        <message>
            <source>Next page</source>
            <translation>Página siguiente</translation>
        </message>
    </context>
    <context>
        <name>ProblemBar</name>
        <message>
            <source>DAMAGED. %1</source>
            <translation>DAÑADO. %1</translation>
        </message>
        <message>
            <source>NOT SAVED. %1</source>
            <translation>NO SE GUARDÓ. %1</translation>
        </message>
        <message>
            <source>Try again</source>
            <translation>Intentar otra vez</translation>
        </message>
        <message>
            <source>All right</source>
            <translation>Entendido</translation>
        </message>
        <message>
            <source>Rescue</source>
            <translation>Rescatar</translation>
        </message>
        <message>
            <source>Copies all that can still be read into a new file and opens it</source>
            <translation>Copia todo lo que aún se puede leer a un archivo nuevo y lo abre</translation>
        </message>
    </context>
    <context>
        <name>RainLock</name>
        <message>
            <source>Hold to unlock</source>
            <translation>Sujete: abre</translation>
        </message>
        <message>
            <source>Hold to lock</source>
            <translation>Sujete: cierra</translation>
        </message>
    </context>
    <context>
        <name>ReadingBar</name>
        <message>
            <source>Pinned: %1</source>
            <translation>Fijada: %1</translation>
        </message>
        <message>
            <source>Press a species, slide to the diameter, lift</source>
            <translation>Especie, deslice, suelte</translation>
        </message>
        <message>
            <source>Basal area: %1</source>
            <translation>Área basal: %1</translation>
        </message>
        <message>
            <source>trees</source>
            <translation>árboles</translation>
        </message>
        <message>
            <source>Press a species, slide to Count, lift</source>
            <translation>Presione una especie, deslice hasta Contar, suelte</translation>
        </message>
        <message>
            <source>Makes this point a count point or a measure point</source>
            <translation>Hace de este punto uno de conteo o de medición</translation>
        </message>
    </context>
    <context>
        <name>Receiver</name>
        <message>
            <source>This device tells no position. A receiver that speaks NMEA can be named on the page Setup.</source>
            <translation>Este aparato no da posición. En la página Ajustes se puede nombrar un receptor que hable NMEA.</translation>
        </message>
        <message>
            <source>There is no receiver at "%1". Correct it on the page Setup.</source>
            <translation>No hay receptor en "%1". Corríjalo en la página Ajustes.</translation>
        </message>
        <message>
            <source>The system keeps the position from this app. Allow it in the system's settings.</source>
            <translation>El sistema no le da la posición a esta aplicación. Permítalo en los ajustes del sistema.</translation>
        </message>
        <message>
            <source>The receiver cannot be reached. Look at its cable, and at whether it is on.</source>
            <translation>No se alcanza el receptor. Mire el cable y si está encendido.</translation>
        </message>
    </context>
    <context>
        <name>RouteSheet</name>
        <message>
            <source>Plan the walk</source>
            <translation>Planear el camino</translation>
        </message>
        <message>
            <source>A bearing is no path: go round water, cliffs, dead and leaning trees, and look up first. Do not enter a neighbour's land without leave.</source>
            <translation>Un rumbo no es un sendero: rodee agua, barrancos, árboles muertos o inclinados, y mire primero hacia arriba. No entre en terreno ajeno sin permiso.</translation>
        </message>
        <message>
            <source>Looking for the shortest walk.</source>
            <translation>Buscando el camino más corto.</translation>
        </message>
        <message>
            <source>From where you are, else from the landing, by every plot to do and back. Streams and neighbour lines of the map are not crossed, but where a road or trail crosses a stream.</source>
            <translation>Desde donde está, o si no desde el patio de acopio, por cada parcela pendiente y de vuelta. No se cruzan arroyos ni linderos vecinos del mapa, salvo donde un camino o sendero cruza un arroyo.</translation>
        </message>
        <message>
            <source>Forget the plan</source>
            <translation>Olvidar el plan</translation>
        </message>
        <message>
            <source>Goes to the nearest plot each time</source>
            <translation>Va cada vez a la parcela más cercana</translation>
        </message>
        <message>
            <source>Plan again from here</source>
            <translation>Planear de nuevo desde aquí</translation>
        </message>
        <message>
            <source>Plan it</source>
            <translation>Planearlo</translation>
        </message>
    </context>
    <context>
        <name>RouteViewModel</name>
        <message>
            <source>done</source>
            <translation>hecha</translation>
        </message>
        <message>
            <source>%1 plots, %2 there and back to the start.</source>
            <translation>%1 parcelas, %2 de ida y vuelta al inicio.</translation>
        </message>
        <message>
            <source>No other order is a shorter walk.</source>
            <translation>Ningún otro orden es más corto.</translation>
        </message>
        <message>
            <source>At most %1 % of the walk could be saved by another order.</source>
            <translation>Con otro orden se ahorraría a lo más %1 % del camino.</translation>
        </message>
        <message>
            <source>Planned way, round what is not crossed: %1.</source>
            <translation>Camino planeado, rodeando lo que no se cruza: %1.</translation>
        </message>
    </context>
    <context>
        <name>SeedlingSheet</name>
        <message>
            <source>Seedlings</source>
            <translation>Plántulas</translation>
        </message>
        <message>
            <source>Seedlings on %1</source>
            <translation>Plántulas en %1</translation>
        </message>
        <message>
            <source>This cruise tells no size of a seedling plot, so nothing can be counted for an acre.</source>
            <translation>Este inventario no dice el tamaño de la parcela de plántulas: no se puede contar por acre.</translation>
        </message>
        <message>
            <source>One less: %1, %2</source>
            <translation>Una menos: %1, %2</translation>
        </message>
        <message>
            <source>One more: %1, %2</source>
            <translation>Una más: %1, %2</translation>
        </message>
        <message>
            <source>Another species</source>
            <translation>Otra especie</translation>
        </message>
    </context>
    <context>
        <name>SetupPage</name>
        <message>
            <source>Light</source>
            <translation>Luz</translation>
        </message>
        <message>
            <source>Day</source>
            <translation>Día</translation>
        </message>
        <message>
            <source>Bright sun</source>
            <translation>Sol fuerte</translation>
        </message>
        <message>
            <source>Night</source>
            <translation>Noche</translation>
        </message>
        <message>
            <source>Size of buttons</source>
            <translation>Tamaño de botones</translation>
        </message>
        <message>
            <source>For gloves</source>
            <translation>Para guantes</translation>
        </message>
        <message>
            <source>For bare hands</source>
            <translation>Sin guantes</translation>
        </message>
        <message>
            <source>Side of the buttons</source>
            <translation>Lado de los botones</translation>
        </message>
        <message>
            <source>Left hand</source>
            <translation>Mano izquierda</translation>
        </message>
        <message>
            <source>Right hand</source>
            <translation>Mano derecha</translation>
        </message>
        <message>
            <source>Units</source>
            <translation>Unidades</translation>
        </message>
        <message>
            <source>in, ac</source>
            <translation>in, ac</translation>
        </message>
        <message>
            <source>cm, ha</source>
            <translation>cm, ha</translation>
        </message>
        <message>
            <source>Language</source>
            <translation>Idioma</translation>
        </message>
        <message>
            <source>Volume keys, up and down</source>
            <translation>Teclas de volumen, más y menos</translation>
        </message>
        <message>
            <source>Again, undo</source>
            <translation>Otra vez, deshacer</translation>
        </message>
        <message>
            <source>Volume</source>
            <translation>Volumen</translation>
        </message>
        <message>
            <source>Error to reach, at 95 %</source>
            <translation>Error que se busca, al 95 %</translation>
        </message>
        <message>
            <source>Species that stand first in the tally</source>
            <translation>Especies que van primero en el conteo</translation>
        </message>
        <message>
            <source>About Oaklight</source>
            <translation>Sobre Oaklight</translation>
        </message>
        <message>
            <source>Show the first pictures again</source>
            <translation>Ver otra vez el comienzo</translation>
        </message>
        <message>
            <source>Species first in the tally</source>
            <translation>Especies primeras en el conteo</translation>
        </message>
        <message>
            <source>Bearings of the walk</source>
            <translation>Rumbos del camino</translation>
        </message>
        <message>
            <source>TRUE</source>
            <translation>VERDADERO</translation>
        </message>
        <message>
            <source>MAGNETIC</source>
            <translation>MAGNÉTICO</translation>
        </message>
        <message>
            <source>Ways, where areas are acres</source>
            <translation>Distancias, si la superficie es en acres</translation>
        </message>
        <message>
            <source>feet</source>
            <translation>pies</translation>
        </message>
        <message>
            <source>chains</source>
            <translation>cadenas</translation>
        </message>
        <message>
            <source>A position is poor beyond</source>
            <translation>Una posición es mala más allá de</translation>
        </message>
        <message>
            <source>GNSS receiver</source>
            <translation>Receptor GNSS</translation>
        </message>
        <message>
            <source>Empty: the tablet's own. Else a serial device, socket://host:port, or none</source>
            <translation>Vacío: el de la tableta. Si no, un puerto serie, socket://host:port, o none</translation>
        </message>
        <message>
            <source>Copies of the tract</source>
            <translation>Copias del predio</translation>
        </message>
        <message>
            <source>Empty: beside the tract. Else a folder on a card or another disk</source>
            <translation>Vacío: junto al predio. Si no, una carpeta en una tarjeta u otro disco</translation>
        </message>
    </context>
    <context>
        <name>SetupViewModel</name>
        <message>
            <source>Your paces in 100 ft</source>
            <translation>Sus pasos en 100 ft</translation>
        </message>
        <message>
            <source>Your paces in 100 m</source>
            <translation>Sus pasos en 100 m</translation>
        </message>
        <message>
            <source>No app replaces looking up. Oaklight is a reminder and a record. It is not training, a permit, a survey, or a check that a tree is safe to fell.</source>
            <translation>Ninguna aplicación reemplaza mirar hacia arriba. Oaklight es un recordatorio y un registro. No es capacitación, ni permiso, ni deslinde, ni prueba de que un árbol se puede tumbar sin peligro.</translation>
        </message>
        <message>
            <source>Local codes, the product label, the saw's manual and licensed people always govern.</source>
            <translation>Siempre mandan las normas locales, la etiqueta del producto, el manual de la motosierra y las personas con licencia.</translation>
        </message>
        <message>
            <source>Oaklight %1</source>
            <translation>Oaklight %1</translation>
        </message>
        <message>
            <source>Made with Qt %1, under the GNU Lesser General Public License, version 3: you may replace it by another version of it.</source>
            <translation>Hecho con Qt %1, bajo la Licencia Pública General Reducida de GNU, versión 3: se puede reemplazar por otra versión.</translation>
        </message>
        <message>
            <source>Typeface Noto Sans, under the SIL Open Font License, version 1.1.</source>
            <translation>Letra Noto Sans, bajo la licencia SIL Open Font, versión 1.1.</translation>
        </message>
    </context>
    <context>
        <name>Sheet</name>
        <message>
            <source>Close</source>
            <translation>Cerrar</translation>
        </message>
    </context>
    <context>
        <name>SideButton</name>
        <message>
            <source>%1: %2</source>
            <translation>%1: %2</translation>
        </message>
    </context>
    <context>
        <name>SideSheet</name>
        <message>
            <source>North</source>
            <translation>Norte</translation>
        </message>
        <message>
            <source>East</source>
            <translation>Este</translation>
        </message>
        <message>
            <source>South</source>
            <translation>Sur</translation>
        </message>
        <message>
            <source>West</source>
            <translation>Oeste</translation>
        </message>
        <message>
            <source>%1: %2</source>
            <translation>%1: %2</translation>
        </message>
        <message>
            <source>Stand at the stem, face this side, look up: what crowds the crown?</source>
            <translation>Párese junto al tronco, de cara a este lado, mire arriba: ¿qué aprieta la copa?</translation>
        </message>
        <message>
            <source>Looked: it is open</source>
            <translation>Ya miré: está libre</translation>
        </message>
        <message>
            <source>A neighbour stands here</source>
            <translation>Aquí hay un vecino</translation>
        </message>
        <message>
            <source>Nobody looked after all</source>
            <translation>Nadie miró todavía</translation>
        </message>
    </context>
    <context>
        <name>SkipSheet</name>
        <message>
            <source>Skip %1</source>
            <translation>Saltar %1</translation>
        </message>
        <message>
            <source>A plot with no tree on it is not skipped: call it empty, and it counts as zero. Skip only what cannot be worked.</source>
            <translation>Una parcela sin árboles no se salta: es vacía y cuenta como cero. Salte solo lo que no se puede trabajar.</translation>
        </message>
        <message>
            <source>Why?</source>
            <translation>¿Por qué?</translation>
        </message>
        <message>
            <source>Another reason</source>
            <translation>Otra razón</translation>
        </message>
        <message>
            <source>Skip for this reason</source>
            <translation>Saltar por esta razón</translation>
        </message>
    </context>
    <context>
        <name>SnapshotKeeper</name>
        <message>
            <source>No copy of the tract was kept: %1</source>
            <translation>No se guardó ninguna copia del predio: %1</translation>
        </message>
    </context>
    <context>
        <name>SourceSentence</name>
        <message>
            <source>Tells how it was computed and by which source</source>
            <translation>Dice cómo se calculó y según qué fuente</translation>
        </message>
    </context>
    <context>
        <name>SpeciesSheet</name>
        <message>
            <source>Species</source>
            <translation>Especie</translation>
        </message>
        <message>
            <source>Any name: chinkapin, tulip, Quercus</source>
            <translation>Cualquier nombre: roble, tulip, Quercus</translation>
        </message>
        <message>
            <source>Search for a species</source>
            <translation>Buscar una especie</translation>
        </message>
        <message>
            <source>No species has a name that begins so. Fewer letters find more.</source>
            <translation>Ninguna especie empieza así. Menos letras hallan más.</translation>
        </message>
    </context>
    <context>
        <name>StandAdvice</name>
        <message>
            <source>Stand. Tap for another</source>
            <translation>Rodal. Toque para cambiar</translation>
        </message>
        <message>
            <source>Stand</source>
            <translation>Rodal</translation>
        </message>
        <message>
            <source>No crop tree cards in this stand. Stand at a good oak and make the first.</source>
            <translation>Este rodal no tiene tarjetas. Párese junto a un buen roble y haga la primera.</translation>
        </message>
        <message>
            <source>Working …</source>
            <translation>Trabajando …</translation>
        </message>
    </context>
    <context>
        <name>StandNowViewModel</name>
        <message>
            <source>Stand: see page Stand</source>
            <translation>Rodal: vea la página Rodal</translation>
        </message>
    </context>
    <context>
        <name>StandPage</name>
        <message>
            <source>Shows its figures</source>
            <translation>Muestra sus cifras</translation>
        </message>
        <message>
            <source>Tells the whole advice and its rules</source>
            <translation>Dice todo el consejo y sus reglas</translation>
        </message>
        <message>
            <source>Tells how it was computed</source>
            <translation>Dice cómo se calculó</translation>
        </message>
        <message>
            <source>What it is made of</source>
            <translation>De qué está hecho</translation>
        </message>
        <message>
            <source>How many trees of which size</source>
            <translation>Cuántos árboles de cada tamaño</translation>
        </message>
        <message>
            <source>How full it stands</source>
            <translation>Qué tan lleno está</translation>
        </message>
    </context>
    <context>
        <name>StandSheet</name>
        <message>
            <source>New stand</source>
            <translation>Rodal nuevo</translation>
        </message>
        <message>
            <source>Name of the stand</source>
            <translation>Nombre del rodal</translation>
        </message>
        <message>
            <source>Area, hectares</source>
            <translation>Superficie, hectáreas</translation>
        </message>
        <message>
            <source>Area, acres</source>
            <translation>Superficie, acres</translation>
        </message>
        <message>
            <source>Walked for marking, ha</source>
            <translation>Recorrido para marcar, ha</translation>
        </message>
        <message>
            <source>Walked for marking, acres</source>
            <translation>Recorrido para marcar, acres</translation>
        </message>
        <message>
            <source>Without it no tree of this stand is put on a cutting list</source>
            <translation>Sin esto, ningún árbol del rodal entra en la lista de corte</translation>
        </message>
        <message>
            <source>What the owner wants</source>
            <translation>Lo que quiere el dueño</translation>
        </message>
        <message>
            <source>Save stand</source>
            <translation>Guardar rodal</translation>
        </message>
        <message>
            <source>Add plots</source>
            <translation>Agregar parcelas</translation>
        </message>
        <message>
            <source>Outline on the map</source>
            <translation>Lindero en el mapa</translation>
        </message>
    </context>
    <context>
        <name>StandViewModel</name>
        <message>
            <source>Whole tract</source>
            <translation>Todo el predio</translation>
        </message>
        <message>
            <source>Computing ...</source>
            <translation>Calculando ...</translation>
        </message>
        <message>
            <source>Bars: the share of each species in the basal area of live trees</source>
            <translation>Barras: parte de cada especie en el área basal viva</translation>
        </message>
        <message>
            <source>Bars: how many trees there are of which size</source>
            <translation>Barras: cuántos árboles hay de cada tamaño</translation>
        </message>
        <message>
            <source>The stand on the stocking guide, now and after the recommended release</source>
            <translation>El rodal en la guía de densidad, ahora y después de la liberación recomendada</translation>
        </message>
        <message>
            <source>The stand on the stocking guide</source>
            <translation>El rodal en la guía de densidad</translation>
        </message>
        <message>
            <source>Plots still needed</source>
            <translation>Parcelas que faltan</translation>
        </message>
        <message>
            <source>What this stand needs</source>
            <translation>Lo que este rodal necesita</translation>
        </message>
    </context>
    <context>
        <name>StandWords</name>
        <message>
            <source>Stand: no live tree, %1</source>
            <translation>Rodal: ningún árbol vivo, %1</translation>
        </message>
        <message>
            <source>%1&#xa0;±&#xa0;%2</source>
            <translation>%1&#xa0;±&#xa0;%2</translation>
        </message>
        <message>
            <source>Stand: %1 %2, %3</source>
            <translation>Rodal: %1 %2, %3</translation>
        </message>
        <message>
            <source>%1 to %2&#xa0;%</source>
            <translation>%1 a %2&#xa0;%</translation>
        </message>
        <message>
            <source>By ratio, from the points that were measured.</source>
            <translation>Por razón, de los puntos que se midieron.</translation>
        </message>
        <message>
            <source>1 tree by local numbers.</source>
            <translation>1 árbol con números del lugar.</translation>
        </message>
        <message>
            <source>%1 trees by local numbers.</source>
            <translation>%1 árboles con números del lugar.</translation>
        </message>
        <message>
            <source>%1 stands, each weighing by its area.</source>
            <translation>%1 rodales, cada uno pesa por su superficie.</translation>
        </message>
        <message>
            <source>1 plot</source>
            <translation>1 parcela</translation>
        </message>
        <message>
            <source>%1 plots</source>
            <translation>%1 parcelas</translation>
        </message>
        <message>
            <source>1 of them without a tree (counted as 0)</source>
            <translation>1 de ellas sin árboles (cuenta como 0)</translation>
        </message>
        <message>
            <source>%1 of them without a tree (counted as 0)</source>
            <translation>%1 de ellas sin árboles (cuentan como 0)</translation>
        </message>
        <message>
            <source>1 still to visit.</source>
            <translation>Falta visitar 1.</translation>
        </message>
        <message>
            <source>%1 still to visit.</source>
            <translation>Falta visitar %1.</translation>
        </message>
        <message>
            <source>1 skipped, not counted.</source>
            <translation>1 saltada, no cuenta.</translation>
        </message>
        <message>
            <source>%1 skipped, not counted.</source>
            <translation>%1 saltadas, no cuentan.</translation>
        </message>
        <message>
            <source>1 record under the smallest size tallied is left out.</source>
            <translation>Se deja fuera 1 registro bajo el tamaño mínimo.</translation>
        </message>
        <message>
            <source>%1 records under the smallest size tallied are left out.</source>
            <translation>Se dejan fuera %1 registros bajo el tamaño mínimo.</translation>
        </message>
        <message>
            <source>%1 times in 100 the truth lies within ±.</source>
            <translation>%1 veces de 100 la verdad queda dentro de ±.</translation>
        </message>
        <message>
            <source>Enough plots: basal area is known within ±&#xa0;%1&#xa0;%, %2 times in 100.</source>
            <translation>Parcelas suficientes: el área basal se conoce a ±&#xa0;%1&#xa0;%, %2 veces de 100.</translation>
        </message>
        <message>
            <source>%1 to know basal area within ±&#xa0;%2&#xa0;%, %3 times in 100.</source>
            <translation>%1 para conocer el área basal a ±&#xa0;%2&#xa0;%, %3 veces de 100.</translation>
        </message>
        <message>
            <source>Measure 1 more plot</source>
            <translation>Mida 1 parcela más</translation>
        </message>
        <message>
            <source>Measure %1 more plots</source>
            <translation>Mida %1 parcelas más</translation>
        </message>
        <message>
            <source>%1, %2 rule</source>
            <translation>%1, regla %2</translation>
        </message>
        <message>
            <source>±&#xa0;%1 points</source>
            <translation>±&#xa0;%1 puntos</translation>
        </message>
        <message>
            <source>±&#xa0;%1</source>
            <translation>±&#xa0;%1</translation>
        </message>
        <message>
            <source>±&#xa0;%1 (%2&#xa0;%)</source>
            <translation>±&#xa0;%1 (%2&#xa0;%)</translation>
        </message>
        <message>
            <source>Not found on 1 plot</source>
            <translation>No se halló en 1 parcela</translation>
        </message>
        <message>
            <source>Not found on %1 plots</source>
            <translation>No se halló en %1 parcelas</translation>
        </message>
        <message>
            <source>%1: up to %2 % of such plots may still hold it.</source>
            <translation>%1: hasta %2 % de esas parcelas aún puede tenerlo.</translation>
        </message>
        <message>
            <source>A stand has one plot: no error can be told.</source>
            <translation>Un rodal tiene una sola parcela: no se puede dar el error.</translation>
        </message>
        <message>
            <source>n = 1: no error can be told.</source>
            <translation>n = 1: no se puede dar el error.</translation>
        </message>
        <message>
            <source>n = 2: very unsure.</source>
            <translation>n = 2: muy inseguro.</translation>
        </message>
        <message>
            <source>Found on %1 of %2 plots: the error is likely larger.</source>
            <translation>Hallado en %1 de %2 parcelas: el error quizá es mayor.</translation>
        </message>
        <message>
            <source>No logs were counted on 1 tree.</source>
            <translation>En 1 árbol no se contaron trozas.</translation>
        </message>
        <message>
            <source>No logs were counted on %1 trees.</source>
            <translation>En %1 árboles no se contaron trozas.</translation>
        </message>
        <message>
            <source>1 tree is outside the table.</source>
            <translation>1 árbol queda fuera de la tabla.</translation>
        </message>
        <message>
            <source>%1 trees are outside the table.</source>
            <translation>%1 árboles quedan fuera de la tabla.</translation>
        </message>
        <message>
            <source>No live tree was tallied.</source>
            <translation>No se contó ningún árbol vivo.</translation>
        </message>
        <message>
            <source>Too low: 1 tree is not in it.</source>
            <translation>Muy bajo: falta 1 árbol.</translation>
        </message>
        <message>
            <source>Too low: %1 trees are not in it.</source>
            <translation>Muy bajo: faltan %1 árboles.</translation>
        </message>
        <message>
            <source>Outside the upland oak guide: a rough guess.</source>
            <translation>Fuera de la guía de robles de loma: cálculo aproximado.</translation>
        </message>
        <message>
            <source>Beyond the printed guide.</source>
            <translation>Fuera de la guía impresa.</translation>
        </message>
        <message>
            <source>not known</source>
            <translation>desconocido</translation>
        </message>
        <message>
            <source>none found</source>
            <translation>ninguno hallado</translation>
        </message>
        <message>
            <source>Not known.</source>
            <translation>Desconocido.</translation>
        </message>
        <message>
            <source>None found.</source>
            <translation>Ninguno hallado.</translation>
        </message>
        <message>
            <source>%1 %2.</source>
            <translation>%1 %2.</translation>
        </message>
        <message>
            <source>Design: %1.</source>
            <translation>Diseño: %1.</translation>
        </message>
        <message>
            <source>n = %1 plots, found on %2 of them.</source>
            <translation>n = %1 parcelas, hallado en %2 de ellas.</translation>
        </message>
        <message>
            <source>Standard error %1, times t = %2 for %3 degrees of freedom, is ± %4: %5 times in 100 such an interval holds the truth.</source>
            <translation>Error estándar %1, por t = %2 con %3 grados de libertad, es ± %4: %5 veces de 100 ese intervalo contiene la verdad.</translation>
        </message>
        <message>
            <source>read in the source</source>
            <translation>leído en la fuente</translation>
        </message>
        <message>
            <source>derived</source>
            <translation>derivado</translation>
        </message>
        <message>
            <source>common practice</source>
            <translation>práctica común</translation>
        </message>
        <message>
            <source>from memory, not read again</source>
            <translation>de memoria, sin releer</translation>
        </message>
        <message>
            <source>Where it holds</source>
            <translation>Dónde vale</translation>
        </message>
        <message>
            <source>Source</source>
            <translation>Fuente</translation>
        </message>
        <message>
            <source>%1 (%2).</source>
            <translation>%1 (%2).</translation>
        </message>
        <message>
            <source>Here</source>
            <translation>Aquí</translation>
        </message>
        <message>
            <source>%1 plots in all, %2 measured.</source>
            <translation>%1 parcelas en total, %2 medidas.</translation>
        </message>
        <message>
            <source>Basal area varies by %1 % between plots.</source>
            <translation>El área basal varía %1 % entre parcelas.</translation>
        </message>
        <message>
            <source>Advice</source>
            <translation>Consejo</translation>
        </message>
        <message>
            <source>It rests on</source>
            <translation>Se basa en</translation>
        </message>
        <message>
            <source>the plots of this stand and the crop tree cards of its marking walk.</source>
            <translation>las parcelas de este rodal y las tarjetas de su recorrido de marcado.</translation>
        </message>
        <message>
            <source>the plots of this stand alone. No tree of a marking walk is recorded yet.</source>
            <translation>solo las parcelas de este rodal. Aún no hay árboles de un recorrido de marcado.</translation>
        </message>
        <message>
            <source>Rule %1</source>
            <translation>Regla %1</translation>
        </message>
        <message>
            <source>%1 Source: %2 (%3).</source>
            <translation>%1 Fuente: %2 (%3).</translation>
        </message>
    </context>
    <context>
        <name>StumpActs</name>
        <message>
            <source>Found as marked</source>
            <translation>Como estaba marcado</translation>
        </message>
        <message>
            <source>Still standing</source>
            <translation>Sigue en pie</translation>
        </message>
        <message>
            <source>Hung up</source>
            <translation>Enganchado</translation>
        </message>
        <message>
            <source>Cut, not marked</source>
            <translation>Cortado sin marca</translation>
        </message>
        <message>
            <source>Hurt tree</source>
            <translation>Árbol herido</translation>
        </message>
    </context>
    <context>
        <name>StumpInHand</name>
        <message>
            <source>Choose a tree that was to be left, if it was cut or hurt.</source>
            <translation>Elija un árbol que debía quedar, si fue cortado o herido.</translation>
        </message>
        <message>
            <source>Every tree of the list was looked at.</source>
            <translation>Se miraron todos los árboles de la lista.</translation>
        </message>
        <message>
            <source>Tag %1</source>
            <translation>Etiqueta %1</translation>
        </message>
        <message>
            <source>Its worst wound, if it is hurt</source>
            <translation>Su peor herida, si está herido</translation>
        </message>
        <message>
            <source>Large: 100 square inches of bare wood, or half of the girth.</source>
            <translation>Grande: 100 pulgadas cuadradas de madera desnuda, o la mitad del contorno.</translation>
        </message>
        <message>
            <source>Noted: %1</source>
            <translation>Anotado: %1</translation>
        </message>
    </context>
    <context>
        <name>StumpListRow</name>
        <message>
            <source>%1; %2</source>
            <translation>%1; %2</translation>
        </message>
    </context>
    <context>
        <name>StumpMore</name>
        <message>
            <source>Back to the list</source>
            <translation>Volver a la lista</translation>
        </message>
        <message>
            <source>Trees to be left</source>
            <translation>Árboles que quedan</translation>
        </message>
        <message>
            <source>A tree that was to be left, and was cut or hurt</source>
            <translation>Un árbol que debía quedar y fue cortado o herido</translation>
        </message>
        <message>
            <source>Stump without a tag</source>
            <translation>Tocón sin etiqueta</translation>
        </message>
        <message>
            <source>Choose a tree</source>
            <translation>Elegir un árbol</translation>
        </message>
        <message>
            <source>Next tree</source>
            <translation>Árbol siguiente</translation>
        </message>
        <message>
            <source>The nearest one that nobody looked at</source>
            <translation>El más cercano que nadie ha mirado</translation>
        </message>
        <message>
            <source>Report</source>
            <translation>Informe</translation>
        </message>
        <message>
            <source>What was found, damage, what it was worth, audit by sample</source>
            <translation>Lo encontrado, los daños, lo que valía y la auditoría por muestreo</translation>
        </message>
    </context>
    <context>
        <name>StumpReport</name>
        <message>
            <source>Write the report</source>
            <translation>Escribir el informe</translation>
        </message>
        <message>
            <source>Writes the pages and the list beside the tract file</source>
            <translation>Escribe las páginas y la lista junto al archivo del predio</translation>
        </message>
    </context>
    <context>
        <name>StumpReportViewModel</name>
        <message>
            <source>Audit by sample, %1 % sure</source>
            <translation>Auditoría por muestreo, %1 % de confianza</translation>
        </message>
        <message>
            <source>No audit</source>
            <translation>Sin auditoría</translation>
        </message>
        <message>
            <source>At most %1 % wrong</source>
            <translation>A lo sumo %1 % mal</translation>
        </message>
        <message>
            <source>%1 % of those looked at were found as marked</source>
            <translation>%1 % de los mirados estaban como se marcó</translation>
        </message>
        <message>
            <source>%1 cut without a mark</source>
            <translation>%1 cortados sin marca</translation>
        </message>
        <message>
            <source>as saw logs %1 board feet</source>
            <translation>como trozas %1 pies tablares</translation>
        </message>
        <message>
            <source>or as firewood %1 cords</source>
            <translation>o como leña %1 cuerdas</translation>
        </message>
        <message>
            <source>crop trees lost: OVER the agreed limit</source>
            <translation>árboles de futuro perdidos: SOBRE el límite acordado</translation>
        </message>
        <message>
            <source>trees lost: OVER the agreed limit</source>
            <translation>árboles perdidos: SOBRE el límite acordado</translation>
        </message>
        <message>
            <source>audit: look at %1 trees</source>
            <translation>auditoría: mirar %1 árboles</translation>
        </message>
        <message>
            <source>Written: %1, in the folder %2</source>
            <translation>Escrito: %1, en la carpeta %2</translation>
        </message>
    </context>
    <context>
        <name>StumpTag</name>
        <message>
            <source>Tag %1</source>
            <translation>Etiqueta %1</translation>
        </message>
    </context>
    <context>
        <name>StumpsPage</name>
        <message>
            <source>Trees after the cut</source>
            <translation>Árboles después de la corta</translation>
        </message>
        <message>
            <source>Stump without a tag</source>
            <translation>Tocón sin etiqueta</translation>
        </message>
        <message>
            <source>Diameter over the bark</source>
            <translation>Diámetro con corteza</translation>
        </message>
    </context>
    <context>
        <name>StumpsViewModel</name>
        <message>
            <source>crop tree</source>
            <translation>árbol de futuro</translation>
        </message>
        <message>
            <source>to be left</source>
            <translation>debe quedar</translation>
        </message>
        <message>
            <source>Not looked at</source>
            <translation>Sin mirar</translation>
        </message>
        <message>
            <source>Found as marked</source>
            <translation>Como estaba marcado</translation>
        </message>
        <message>
            <source>Still standing</source>
            <translation>Sigue en pie</translation>
        </message>
        <message>
            <source>Hung up</source>
            <translation>Enganchado</translation>
        </message>
        <message>
            <source>Cut, not marked</source>
            <translation>Cortado sin marca</translation>
        </message>
        <message>
            <source>Hurt</source>
            <translation>Herido</translation>
        </message>
        <message>
            <source>%1: %2</source>
            <translation>%1: %2</translation>
        </message>
        <message>
            <source>%1 (noted %2 times)</source>
            <translation>%1 (anotado %2 veces)</translation>
        </message>
        <message>
            <source>on the map</source>
            <translation>en el mapa</translation>
        </message>
        <message>
            <source>no position</source>
            <translation>sin posición</translation>
        </message>
        <message>
            <source>%1° %2, %3 %4</source>
            <translation>%1° %2, %3 %4</translation>
        </message>
        <message>
            <source>STOP. %1</source>
            <translation>ALTO. %1</translation>
        </message>
        <message>
            <source>%1 of %2 looked at, %3 not right; %4 cut without a mark, %5 hurt</source>
            <translation>%1 de %2 mirados, %3 no están bien; %4 cortados sin marca, %5 heridos</translation>
        </message>
        <message>
            <source>Look up: broken limbs, bent stems, rolling logs. Never alone, in wind or near felling.</source>
            <translation>Mire arriba: ramas rotas, troncos doblados, trozas que ruedan. Nunca solo, con viento o cerca de un derribo.</translation>
        </message>
        <message>
            <source>Nobody goes under or beside a tree that is hung up.</source>
            <translation>Nadie pasa debajo ni al lado de un árbol enganchado.</translation>
        </message>
        <message>
            <source>Small</source>
            <translation>Pequeña</translation>
        </message>
        <message>
            <source>Medium</source>
            <translation>Mediana</translation>
        </message>
        <message>
            <source>Large</source>
            <translation>Grande</translation>
        </message>
        <message>
            <source>Broken</source>
            <translation>Quebrado</translation>
        </message>
        <message>
            <source>Stump without a tag, %1</source>
            <translation>Tocón sin etiqueta, %1</translation>
        </message>
    </context>
    <context>
        <name>TallyActions</name>
        <message>
            <source>Keypad</source>
            <translation>Teclado</translation>
        </message>
        <message>
            <source>Type a measured diameter</source>
            <translation>Escriba un diámetro medido</translation>
        </message>
        <message>
            <source>Same again</source>
            <translation>Otro igual</translation>
        </message>
        <message>
            <source>One more tree like the last</source>
            <translation>Un árbol más como el último</translation>
        </message>
        <message>
            <source>More</source>
            <translation>Más</translation>
        </message>
        <message>
            <source>Border tree</source>
            <translation>Árbol de borde</translation>
        </message>
        <message>
            <source>Whether a tree near the edge is in or out</source>
            <translation>Si un árbol cerca del límite entra o no</translation>
        </message>
        <message>
            <source>Seedlings</source>
            <translation>Plántulas</translation>
        </message>
        <message>
            <source>Next plot</source>
            <translation>Otra parcela</translation>
        </message>
        <message>
            <source>Keypad: %1</source>
            <translation>Teclado: %1</translation>
        </message>
        <message>
            <source>Type a measured diameter, or one that has no cell</source>
            <translation>Escriba un diámetro medido, o uno que no tiene casilla</translation>
        </message>
        <message>
            <source>Count or measure</source>
            <translation>Contar o medir</translation>
        </message>
        <message>
            <source>Whether trees at this point are counted or measured</source>
            <translation>Si los árboles de este punto se cuentan o se miden</translation>
        </message>
    </context>
    <context>
        <name>TallyField</name>
        <message>
            <source>Other</source>
            <translation>Otra</translation>
        </message>
        <message>
            <source>Other species: search all</source>
            <translation>Otra especie: buscar en todas</translation>
        </message>
        <message>
            <source>%1, diameter class</source>
            <translation>%1, clase de diámetro</translation>
        </message>
        <message>
            <source>Species</source>
            <translation>Especie</translation>
        </message>
        <message>
            <source>Back to the species</source>
            <translation>Volver a las especies</translation>
        </message>
        <message>
            <source>Locked against rain</source>
            <translation>Bloqueado por lluvia</translation>
        </message>
    </context>
    <context>
        <name>TallyPage</name>
        <message>
            <source>No species is pinned</source>
            <translation>Ninguna especie fijada</translation>
        </message>
        <message>
            <source>Always keypad</source>
            <translation>Siempre teclado</translation>
        </message>
    </context>
    <context>
        <name>TallyViewModel</name>
        <message>
            <source>%1 counted</source>
            <translation>%1 contados</translation>
        </message>
        <message>
            <source>%1: count point</source>
            <translation>%1: punto de conteo</translation>
        </message>
        <message>
            <source>%1: measure point</source>
            <translation>%1: punto de medición</translation>
        </message>
        <message>
            <source>Count</source>
            <translation>Contar</translation>
        </message>
        <message>
            <source>logs, height? tap the tree</source>
            <translation>¿trozas, altura? toque el árbol</translation>
        </message>
        <message>
            <source>This file is damaged. Nothing more is recorded in it.</source>
            <translation>Este archivo está dañado. No se anota nada más en él.</translation>
        </message>
        <message>
            <source>%1, plot %2</source>
            <translation>%1, parcela %2</translation>
        </message>
        <message>
            <source>No plot is chosen. Choose one on the page Walk or Tract.</source>
            <translation>No hay parcela elegida. Elija una en la página Camino o Predio.</translation>
        </message>
        <message>
            <source>This plot was skipped. Plan it again on the page Walk to tally it.</source>
            <translation>Esta parcela se saltó. Para contarla, planéela otra vez en la página Camino.</translation>
        </message>
        <message>
            <source>This tract is open for looking only.</source>
            <translation>Este predio está abierto solo para mirar.</translation>
        </message>
        <message>
            <source>Choose a species first.</source>
            <translation>Elija primero una especie.</translation>
        </message>
        <message>
            <source>double?</source>
            <translation>¿doble?</translation>
        </message>
        <message>
            <source>%1 %2</source>
            <translation>%1 %2</translation>
        </message>
        <message>
            <source>%1, dead</source>
            <translation>%1, muerto</translation>
        </message>
        <message>
            <source>over %1 in</source>
            <translation>más de %1 in</translation>
        </message>
        <message>
            <source>over %1 cm</source>
            <translation>más de %1 cm</translation>
        </message>
        <message>
            <source>%1, large?</source>
            <translation>%1, ¿grande?</translation>
        </message>
    </context>
    <context>
        <name>TractOverview</name>
        <message>
            <source>What several tablets changed</source>
            <translation>Lo que cambiaron varias tabletas</translation>
        </message>
        <message>
            <source>Name the tract</source>
            <translation>Nombrar el predio</translation>
        </message>
        <message>
            <source>Add a stand</source>
            <translation>Agregar un rodal</translation>
        </message>
        <message>
            <source>Choose the design</source>
            <translation>Elegir el diseño</translation>
        </message>
        <message>
            <source>Add plots</source>
            <translation>Agregar parcelas</translation>
        </message>
        <message>
            <source>Walk to the next plot</source>
            <translation>Ir a la otra parcela</translation>
        </message>
        <message>
            <source>Go on with the light</source>
            <translation>Seguir con la luz</translation>
        </message>
        <message>
            <source>To the marks</source>
            <translation>A las marcas</translation>
        </message>
        <message>
            <source>plots visited</source>
            <translation>parcelas visitadas</translation>
        </message>
        <message>
            <source>Stands</source>
            <translation>Rodales</translation>
        </message>
        <message>
            <source>Cruise: %1</source>
            <translation>Inventario: %1</translation>
        </message>
        <message>
            <source>Design of the cruise</source>
            <translation>Diseño del inventario</translation>
        </message>
        <message>
            <source>About this tract</source>
            <translation>Sobre este predio</translation>
        </message>
        <message>
            <source>Its name, and how an ambulance finds it</source>
            <translation>Su nombre y cómo llega una ambulancia</translation>
        </message>
        <message>
            <source>Tract files</source>
            <translation>Archivos</translation>
        </message>
        <message>
            <source>New, open, copy for a friend</source>
            <translation>Nuevo, abrir, copia para un amigo</translation>
        </message>
        <message>
            <source>Say how much was walked</source>
            <translation>Decir cuánto se recorrió</translation>
        </message>
        <message>
            <source>Tract files: new, open, copy</source>
            <translation>Archivos de predios: nuevo, abrir, copiar</translation>
        </message>
        <message>
            <source>Outlines of stands</source>
            <translation>Linderos de rodales</translation>
        </message>
        <message>
            <source>Out of a file of GeoJSON, KML or GPX</source>
            <translation>De un archivo GeoJSON, KML o GPX</translation>
        </message>
        <message>
            <source>Lay out plots</source>
            <translation>Trazar parcelas</translation>
        </message>
        <message>
            <source>How many, and where each lies</source>
            <translation>Cuántas, y dónde está cada una</translation>
        </message>
        <message>
            <source>Which of the points still to do are measured, and which only counted</source>
            <translation>Qué puntos por hacer se miden y cuáles solo se cuentan</translation>
        </message>
    </context>
    <context>
        <name>TractViewModel</name>
        <message>
            <source>Map of the tract. %1</source>
            <translation>Mapa del predio. %1</translation>
        </message>
        <message>
            <source>%1 of %2</source>
            <translation>%1 de %2</translation>
        </message>
        <message>
            <source>Say what the owner calls this tract.</source>
            <translation>Diga cómo llama el dueño a este predio.</translation>
        </message>
        <message>
            <source>Add a stand: a part of the tract that is one wood, with one aim.</source>
            <translation>Agregue un rodal: una parte del predio con un mismo bosque y un mismo fin.</translation>
        </message>
        <message>
            <source>Choose how the plots are laid out: by points, or by circles of one size.</source>
            <translation>Elija cómo son las parcelas: puntos, o círculos de un tamaño.</translation>
        </message>
        <message>
            <source>Add the plots of each stand.</source>
            <translation>Agregue las parcelas de cada rodal.</translation>
        </message>
        <message>
            <source>1 plot to do in %1</source>
            <translation>1 parcela por hacer en %1</translation>
        </message>
        <message>
            <source>%1 plots to do in %2</source>
            <translation>%1 parcelas por hacer en %2</translation>
        </message>
        <message>
            <source>%1: nobody said how much ground the marking walk covered</source>
            <translation>%1: nadie dijo cuánto terreno cubrió el recorrido de marcado</translation>
        </message>
        <message>
            <source>1 crop tree has a side at which nobody looked up</source>
            <translation>1 árbol de futuro tiene un lado que nadie miró</translation>
        </message>
        <message>
            <source>%1 crop trees have a side at which nobody looked up</source>
            <translation>%1 árboles de futuro tienen un lado que nadie miró</translation>
        </message>
        <message>
            <source>1 crop tree has no verdict yet</source>
            <translation>1 árbol de futuro aún no tiene fallo</translation>
        </message>
        <message>
            <source>%1 crop trees have no verdict yet</source>
            <translation>%1 árboles de futuro aún no tienen fallo</translation>
        </message>
        <message>
            <source>1 tree to look at again</source>
            <translation>1 árbol por mirar otra vez</translation>
        </message>
        <message>
            <source>%1 trees to look at again</source>
            <translation>%1 árboles por mirar otra vez</translation>
        </message>
        <message>
            <source>Nothing is left to do.</source>
            <translation>No queda nada por hacer.</translation>
        </message>
        <message>
            <source>%1 done, %2 to do</source>
            <translation>%1 hechas, %2 por hacer</translation>
        </message>
        <message>
            <source>%1, %2 skipped</source>
            <translation>%1, %2 saltadas</translation>
        </message>
        <message>
            <source>no plots yet</source>
            <translation>sin parcelas</translation>
        </message>
        <message>
            <source>%1; %2</source>
            <translation>%1; %2</translation>
        </message>
        <message>
            <source>%1: %2</source>
            <translation>%1: %2</translation>
        </message>
    </context>
    <context>
        <name>TreeSheet</name>
        <message>
            <source>Measured</source>
            <translation>Medido</translation>
        </message>
        <message>
            <source>%1: %2</source>
            <translation>%1: %2</translation>
        </message>
        <message>
            <source>Another species</source>
            <translation>Otra especie</translation>
        </message>
        <message>
            <source>Take this tree out</source>
            <translation>Sacar este árbol</translation>
        </message>
        <message>
            <source>Undo brings it back</source>
            <translation>Deshacer lo devuelve</translation>
        </message>
    </context>
    <context>
        <name>TreeViewModel</name>
        <message>
            <source>logs of 16 ft</source>
            <translation>trozas de 16 ft</translation>
        </message>
        <message>
            <source>° true</source>
            <translation>° verdadero</translation>
        </message>
        <message>
            <source>%1 %2</source>
            <translation>%1 %2</translation>
        </message>
        <message>
            <source>Diameter</source>
            <translation>Diámetro</translation>
        </message>
        <message>
            <source>Logs</source>
            <translation>Trozas</translation>
        </message>
        <message>
            <source>Height</source>
            <translation>Altura</translation>
        </message>
        <message>
            <source>Live crown</source>
            <translation>Copa viva</translation>
        </message>
        <message>
            <source>Dieback</source>
            <translation>Muerte de ramas</translation>
        </message>
        <message>
            <source>Azimuth</source>
            <translation>Azimut</translation>
        </message>
        <message>
            <source>Distance</source>
            <translation>Distancia</translation>
        </message>
        <message>
            <source>Stems</source>
            <translation>Tallos</translation>
        </message>
        <message>
            <source>Counts at edge</source>
            <translation>Cuenta en el borde</translation>
        </message>
    </context>
    <context>
        <name>TurnChoices</name>
        <message>
            <source>Which points are measured</source>
            <translation>Qué puntos se miden</translation>
        </message>
        <message>
            <source>At the others trees are counted by species, without sizes. In each stand the first point is measured.</source>
            <translation>En los demás se cuentan los árboles por especie, sin tamaños. En cada rodal se mide el primer punto.</translation>
        </message>
    </context>
    <context>
        <name>TurnsSheet</name>
        <message>
            <source>Count and measure points</source>
            <translation>Puntos de conteo y de medición</translation>
        </message>
        <message>
            <source>Points that were visited stay as they are.</source>
            <translation>Los puntos ya visitados quedan como están.</translation>
        </message>
        <message>
            <source>Give the points to do these turns</source>
            <translation>Dar estos turnos a los puntos por hacer</translation>
        </message>
    </context>
    <context>
        <name>TurnsViewModel</name>
        <message>
            <source>all points</source>
            <translation>todos los puntos</translation>
        </message>
        <message>
            <source>1 point in %1</source>
            <translation>1 punto de cada %1</translation>
        </message>
        <message>
            <source>All points are measured</source>
            <translation>Se miden todos los puntos</translation>
        </message>
        <message>
            <source>1 point in %1 is measured</source>
            <translation>Se mide 1 punto de cada %1</translation>
        </message>
    </context>
    <context>
        <name>WalkActions</name>
        <message>
            <source>Empty plot</source>
            <translation>Parcela vacía</translation>
        </message>
        <message>
            <source>Visited, no tree to tally: it counts as zero</source>
            <translation>Visitada, sin árboles: cuenta como cero</translation>
        </message>
        <message>
            <source>Skip</source>
            <translation>Saltar</translation>
        </message>
        <message>
            <source>Not visited, for a reason: not in the sample</source>
            <translation>No visitada, por una razón: fuera de la muestra</translation>
        </message>
        <message>
            <source>Plan again</source>
            <translation>Planear otra vez</translation>
        </message>
        <message>
            <source>Not visited after all</source>
            <translation>No se visitó</translation>
        </message>
        <message>
            <source>Nearest to do</source>
            <translation>La más cercana</translation>
        </message>
        <message>
            <source>Goes to the nearest plot that is still to do</source>
            <translation>Va a la parcela por hacer más cercana</translation>
        </message>
        <message>
            <source>All plots</source>
            <translation>Todas</translation>
        </message>
        <message>
            <source>Next of the walk</source>
            <translation>Siguiente del camino</translation>
        </message>
        <message>
            <source>Goes to the next plot that is still to do</source>
            <translation>Va a la siguiente parcela por hacer</translation>
        </message>
        <message>
            <source>The mean of many fixes at the plot's centre</source>
            <translation>La media de muchas posiciones en el centro de la parcela</translation>
        </message>
        <message>
            <source>Plot centre</source>
            <translation>Centro de parcela</translation>
        </message>
        <message>
            <source>Count or measure</source>
            <translation>Contar o medir</translation>
        </message>
        <message>
            <source>Whether trees at this point are counted or measured</source>
            <translation>Si los árboles de este punto se cuentan o se miden</translation>
        </message>
    </context>
    <context>
        <name>WalkPage</name>
        <message>
            <source>The bearing is from TRUE north. No declination is known for this tract, so no magnetic bearing is given: set your compass's own declination first.</source>
            <translation>El rumbo es desde el norte VERDADERO. No se conoce la declinación de este predio y no se da rumbo magnético: ajuste primero la declinación de su brújula.</translation>
        </message>
        <message>
            <source>Start plot</source>
            <translation>Empezar parcela</translation>
        </message>
        <message>
            <source>All plots: %1</source>
            <translation>Todas las parcelas: %1</translation>
        </message>
        <message>
            <source>All plots</source>
            <translation>Todas</translation>
        </message>
        <message>
            <source>Plan the walk</source>
            <translation>Planear el camino</translation>
        </message>
        <message>
            <source>The shortest way by all plots to do</source>
            <translation>El camino más corto por todas las pendientes</translation>
        </message>
    </context>
    <context>
        <name>WalkTreeSheet</name>
        <message>
            <source>Tag</source>
            <translation>Placa</translation>
        </message>
        <message>
            <source>This tag hangs on %1 already: that tree is meant.</source>
            <translation>Esta placa ya está en %1: se trata de ese árbol.</translation>
        </message>
        <message>
            <source>Species</source>
            <translation>Especie</translation>
        </message>
        <message>
            <source>Diameter (DBH)</source>
            <translation>Diámetro (DAP)</translation>
        </message>
        <message>
            <source>Its crown, looking up</source>
            <translation>Su copa, mirando arriba</translation>
        </message>
        <message>
            <source>On these sides of the crop tree</source>
            <translation>En estos lados del árbol de futuro</translation>
        </message>
        <message>
            <source>Crown class</source>
            <translation>Clase de copa</translation>
        </message>
        <message>
            <source>What is seen on it</source>
            <translation>Lo que se ve en él</translation>
        </message>
        <message>
            <source>Save</source>
            <translation>Guardar</translation>
        </message>
        <message>
            <source>Take it over</source>
            <translation>Tomarlo</translation>
        </message>
    </context>
    <context>
        <name>WalkTreeViewModel</name>
        <message>
            <source>Dead</source>
            <translation>Muerto</translation>
        </message>
        <message>
            <source>Tree %1</source>
            <translation>Árbol %1</translation>
        </message>
        <message>
            <source>New crop tree</source>
            <translation>Nuevo árbol de futuro</translation>
        </message>
        <message>
            <source>Neighbour of %1</source>
            <translation>Vecino de %1</translation>
        </message>
        <message>
            <source>Give it the number that hangs on it.</source>
            <translation>Dele el número que lleva puesto.</translation>
        </message>
        <message>
            <source>Choose its species.</source>
            <translation>Elija su especie.</translation>
        </message>
        <message>
            <source>Enter its diameter.</source>
            <translation>Escriba su diámetro.</translation>
        </message>
    </context>
    <context>
        <name>WalkViewModel</name>
        <message>
            <source>%1, %2</source>
            <translation>%1, %2</translation>
        </message>
        <message>
            <source>not counted</source>
            <translation>no se cuentan</translation>
        </message>
        <message>
            <source>No plots are laid out yet. Add some on the page Tract.</source>
            <translation>Aún no hay parcelas. Agréguelas en la página Predio.</translation>
        </message>
        <message>
            <source>No plot is left to do. Choose any plot from the list to go back to it.</source>
            <translation>No queda parcela por hacer. Elija cualquiera de la lista para volver.</translation>
        </message>
        <message>
            <source>You were at this plot last.</source>
            <translation>Aquí estuvo por última vez.</translation>
        </message>
        <message>
            <source>Nobody recorded where this plot lies. Find it by your own map.</source>
            <translation>Nadie anotó dónde está esta parcela. Búsquela con su mapa.</translation>
        </message>
        <message>
            <source>The way begins at the landing.</source>
            <translation>El camino empieza en el patio de acopio.</translation>
        </message>
        <message>
            <source>No plot was worked yet, so the way there is not known. Find it by your own map.</source>
            <translation>Aún no se trabajó ninguna parcela: no se sabe el camino. Búsquela con su mapa.</translation>
        </message>
        <message>
            <source>The way begins at %1.</source>
            <translation>El camino empieza en %1.</translation>
        </message>
        <message>
            <source>Nobody recorded where %1 lies, so the way from there is not known.</source>
            <translation>Nadie anotó dónde está %1: no se sabe el camino desde allí.</translation>
        </message>
        <message>
            <source>%1 done, %2 to do</source>
            <translation>%1 hechas, %2 por hacer</translation>
        </message>
        <message>
            <source>Not safe to reach</source>
            <translation>Llegar es peligroso</translation>
        </message>
        <message>
            <source>Not safe to work in</source>
            <translation>Trabajar es peligroso</translation>
        </message>
        <message>
            <source>Under water</source>
            <translation>Bajo agua</translation>
        </message>
        <message>
            <source>Off the property</source>
            <translation>Fuera de la propiedad</translation>
        </message>
        <message>
            <source>Owner keeps us out</source>
            <translation>El dueño no deja entrar</translation>
        </message>
        <message>
            <source>Nest or den in use</source>
            <translation>Nido o madriguera en uso</translation>
        </message>
        <message>
            <source>The plot is here, as near as the position can tell. Set its centre now, and do not move it to better ground.</source>
            <translation>La parcela está aquí, hasta donde la posición puede decirlo. Marque ahora su centro y no lo mueva a un lugar mejor.</translation>
        </message>
        <message>
            <source>The way begins where you are.</source>
            <translation>El camino empieza donde usted está.</translation>
        </message>
        <message>
            <source>count point</source>
            <translation>punto de conteo</translation>
        </message>
        <message>
            <source>measure point</source>
            <translation>punto de medición</translation>
        </message>
    </context>
    <context>
        <name>WalkedAsk</name>
        <message>
            <source>Nobody said how much ground the marking walk covered. Without it no tree can be put on a cutting list: each is to look at again.</source>
            <translation>Nadie dijo cuánto terreno cubrió el recorrido de marcado. Sin eso ningún árbol puede ir a una lista de corta: todos quedan por mirar de nuevo.</translation>
        </message>
        <message>
            <source>Say how much was walked</source>
            <translation>Decir cuánto se recorrió</translation>
        </message>
    </context>
    <context>
        <name>Way</name>
        <message>
            <source>Arrow to %1 from true north; north is up</source>
            <translation>Flecha a %1 desde el norte verdadero; el norte está arriba</translation>
        </message>
        <message>
            <source>%1 TRUE</source>
            <translation>%1 VERDADERO</translation>
        </message>
        <message>
            <source>set your compass to (%1)</source>
            <translation>ponga la brújula en (%1)</translation>
        </message>
        <message>
            <source>level distance</source>
            <translation>distancia horizontal</translation>
        </message>
        <message>
            <source>of your paces</source>
            <translation>de sus pasos</translation>
        </message>
        <message>
            <source>Arrow to %1. %2</source>
            <translation>Flecha a %1. %2</translation>
        </message>
    </context>
    <context>
        <name>WayViewModel</name>
        <message>
            <source>Up is the way you walk.</source>
            <translation>Arriba es hacia donde camina.</translation>
        </message>
        <message>
            <source>Face north: up is TRUE north. Walk on, and up is ahead.</source>
            <translation>Mire al norte: arriba es el norte VERDADERO. Al caminar, arriba es adelante.</translation>
        </message>
        <message>
            <source>%1° TRUE</source>
            <translation>%1° VERDADERO</translation>
        </message>
        <message>
            <source>%1° MAGNETIC</source>
            <translation>%1° MAGNÉTICO</translation>
        </message>
        <message>
            <source>%1, %2</source>
            <translation>%1, %2</translation>
        </message>
        <message>
            <source>not counted</source>
            <translation>no se cuentan</translation>
        </message>
        <message>
            <source>No declination is known here, so no magnetic bearing is given: set your compass's own declination first.</source>
            <translation>Aquí no se conoce la declinación y no se da rumbo magnético: ajuste primero la declinación de su brújula.</translation>
        </message>
        <message>
            <source>%1. A compass whose own declination is set to 0 shows the MAGNETIC bearing.</source>
            <translation>%1. Una brújula con su declinación en 0 muestra el rumbo MAGNÉTICO.</translation>
        </message>
        <message>
            <source>%1, on a compass whose own declination is set to 0.</source>
            <translation>%1, en una brújula con su declinación en 0.</translation>
        </message>
        <message>
            <source>west</source>
            <translation>oeste</translation>
        </message>
        <message>
            <source>east</source>
            <translation>este</translation>
        </message>
        <message>
            <source>Declination %1° %2 (WMM2025, ± %3°).</source>
            <translation>Declinación %1° %2 (WMM2025, ± %3°).</translation>
        </message>
        <message>
            <source>OUT OF DATE: the model holds from 2025 to the end of 2029. Ask a current map for the declination.</source>
            <translation>VENCIDO: el modelo vale de 2025 a fines de 2029. Busque la declinación en un mapa actual.</translation>
        </message>
        <message>
            <source>Here a compass is not to be trusted.</source>
            <translation>Aquí no se puede confiar en una brújula.</translation>
        </message>
        <message>
            <source>POOR position: the receiver does not say how good it is.</source>
            <translation>Posición MALA: el receptor no dice qué tan buena es.</translation>
        </message>
        <message>
            <source>POOR position, %1: trust compass and paces.</source>
            <translation>Posición MALA, %1: confíe en brújula y pasos.</translation>
        </message>
        <message>
            <source>Position %1</source>
            <translation>Posición %1</translation>
        </message>
        <message>
            <source>Face north: up is TRUE north.</source>
            <translation>Mire al norte: arriba es el norte VERDADERO.</translation>
        </message>
        <message>
            <source>No position yet.</source>
            <translation>Aún no hay posición.</translation>
        </message>
    </context>
    <context>
        <name>JoinSheet</name>
        <message>
            <source>Join tablets</source>
            <translation>Unir tabletas</translation>
        </message>
        <message>
            <source>Files to join with this one. They stay as they are.</source>
            <translation>Archivos para unir con este. Quedan como están.</translation>
        </message>
        <message>
            <source>A file elsewhere</source>
            <translation>Un archivo en otro lugar</translation>
        </message>
        <message>
            <source>Its whole path, ending in .gpkg</source>
            <translation>Su ruta completa, termina en .gpkg</translation>
        </message>
        <message>
            <source>Add that file</source>
            <translation>Agregar ese archivo</translation>
        </message>
        <message>
            <source>All are of one tract</source>
            <translation>Todos son de un predio</translation>
        </message>
        <message>
            <source>Only when the crews know that they are</source>
            <translation>Solo si las cuadrillas lo saben</translation>
        </message>
        <message>
            <source>Join</source>
            <translation>Unir</translation>
        </message>
    </context>
    <context>
        <name>QuestionCard</name>
        <message>
            <source>Next of %1</source>
            <translation>Siguiente de %1</translation>
        </message>
        <message>
            <source>%1: %2</source>
            <translation>%1: %2</translation>
        </message>
        <message>
            <source>Another name for %1</source>
            <translation>Otro nombre para %1</translation>
        </message>
        <message>
            <source>%1 gets this name</source>
            <translation>%1 recibe este nombre</translation>
        </message>
        <message>
            <source>%1 holds</source>
            <translation>Vale %1</translation>
        </message>
        <message>
            <source>A and B are the same one</source>
            <translation>A y B son lo mismo</translation>
        </message>
    </context>
    <context>
        <name>JoinViewModel</name>
        <message>
            <source>chosen</source>
            <translation>elegido</translation>
        </message>
        <message>
            <source>%1: %2 records and %3 actions that are not here yet</source>
            <translation>%1: %2 registros y %3 acciones que aún no están aquí</translation>
        </message>
        <message>
            <source>Afterwards to decide: %1</source>
            <translation>Después por decidir: %1</translation>
        </message>
        <message>
            <source>Joined: %1 records came in, %2 changed.</source>
            <translation>Unido: entraron %1 registros, cambiaron %2.</translation>
        </message>
        <message>
            <source>The file as it was: %1</source>
            <translation>El archivo como era: %1</translation>
        </message>
        <message>
            <source>Forms changed too: they hold when the tract is opened again.</source>
            <translation>También cambiaron formularios: valen al abrir de nuevo el predio.</translation>
        </message>
        <message>
            <source>1 question from joined files</source>
            <translation>1 pregunta de archivos unidos</translation>
        </message>
        <message>
            <source>%1 questions from joined files</source>
            <translation>%1 preguntas de archivos unidos</translation>
        </message>
        <message>
            <source>%1: both changed</source>
            <translation>%1: ambos cambiaron</translation>
        </message>
        <message>
            <source>%1: removed by one, used by another</source>
            <translation>%1: uno lo quitó, otro lo usó</translation>
        </message>
        <message>
            <source>%1: used twice</source>
            <translation>%1: usado dos veces</translation>
        </message>
        <message>
            <source>REMOVED</source>
            <translation>QUITADO</translation>
        </message>
        <message>
            <source>Decided. Undo opens it again.</source>
            <translation>Decidido. Deshacer lo abre de nuevo.</translation>
        </message>
    </context>
</TS>
